#pragma once

#include "viz/figures.h"

#include <span>
#include <string>
#include <string_view>

namespace deadshore::io {

/// What becomes of markup that the PDF has no form for: in tests it is refused, so that it cannot
/// be overlooked; in the program its text is set plain, so that a note never fails over its dress.
enum class UnknownMarkup { refuse, as_text };

/// The design note as a PDF document: A4, figures drawn from `Figure::drawing` as lines and text
/// (wide ones on pages that lie), contents with page numbers, links, bookmarks, a running foot.
///
/// `note_xhtml` is what `note_html` gives. A figure is named by `data-figure`; what has the class
/// "screen-only" is left out. The same note and figures give the same bytes.
///
/// \throws std::runtime_error if the page is not well-formed, has no <body>, or drawing fails.
/// \throws std::invalid_argument for markup without a form where that is refused.
[[nodiscard]] std::string note_pdf(std::string_view note_xhtml,
                                   std::span<const viz::Figure> figures,
                                   UnknownMarkup unknown = UnknownMarkup::as_text);

}  // namespace deadshore::io
