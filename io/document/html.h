#pragma once

#include "io/document/block.h"

#include <string>
#include <string_view>

namespace deadshore::io {

/// A piece of well-formed XHTML. A type of its own, so that a name from the job cannot get into the
/// page unescaped: plain text becomes Html only through `html_of`.
class Html {
 public:
  Html() = default;

  /// Markup written by us, taken as it stands.
  [[nodiscard]] static Html trusted(std::string markup);

  Html& operator+=(const Html& other);
  [[nodiscard]] const std::string& str() const { return markup_; }

 private:
  std::string markup_;
};
/// One piece of markup behind the other.
[[nodiscard]] Html operator+(Html left, const Html& right);

/// Plain text made safe for element content and quoted attributes; control characters that XML
/// forbids become U+FFFD.
[[nodiscard]] std::string escape_html(std::string_view plain);

/// An element: `<tag class="css_class">inner</tag>`, without a class where `css_class` is empty.
[[nodiscard]] Html element(std::string_view tag, const Html& inner,
                           std::string_view css_class = {});

/// Text with its marks, escaped.
[[nodiscard]] Html html_of(const Text& text);
/// Blocks one under another.
[[nodiscard]] Html html_of(const Blocks& blocks);
/// The viewer of the stages, without its script.
[[nodiscard]] Html html_of(const StageViewer& viewer);

/// An SVG document as part of a page: without what comes before its root element, and with `prefix`
/// put before every id and every reference to one, so that figures cannot take each other's glyphs
/// and clips. `label` is what a screen reader says. Empty where there is no <svg> element.
[[nodiscard]] Html inline_svg(std::string_view svg, std::string_view prefix,
                              std::string_view label);

/// A self-contained page: nothing is loaded. `style` may hold no `<` or `&`, so that the page is
/// XML too.
[[nodiscard]] std::string html_page(std::string_view title, std::string_view style,
                                    const Html& body);

/// The document as a page for the screen, a phone and A4 paper. Every figure has its name in
/// data-figure; what is for the screen alone has the class "screen-only". The same document gives
/// the same bytes.
[[nodiscard]] std::string document_html(const Document& document);

}  // namespace deadshore::io
