#pragma once

#include "io/document/block.h"

#include <string>

namespace deadshore::io {

/// The document as a PDF: A4, figures drawn from `viz::Figure::drawing` as lines and text (wide
/// ones on landscape pages), contents with page numbers, links, bookmarks, a running foot. What is
/// for the screen alone is left out. The same document gives the same bytes.
/// \throws std::runtime_error if drawing fails or no usable font is installed
[[nodiscard]] std::string document_pdf(const Document& document);

}  // namespace deadshore::io
