#include "io/note/inline_svg.h"

#include <fmt/format.h>

#include <array>
#include <string>

namespace deadshore::io {
namespace {

/// Everything that stands directly before an id in SVG.
constexpr std::array<std::string_view, 3> id_openers = {" id=\"", "href=\"#", "url(#"};

void put_after_every(std::string& markup, std::string_view opener, std::string_view prefix) {
  for (std::size_t at = markup.find(opener); at != std::string::npos;
       at = markup.find(opener, at + opener.size())) {
    markup.insert(at + opener.size(), prefix);
  }
}

}  // namespace

Html inline_svg(std::string_view svg, std::string_view prefix, std::string_view label) {
  const std::size_t start = svg.find("<svg");
  if (start == std::string_view::npos) return {};
  std::string markup(svg.substr(start));
  for (const std::string_view opener : id_openers) put_after_every(markup, opener, prefix);
  markup.insert(4, fmt::format(" role=\"img\" aria-label=\"{}\"", escape_html(label)));
  return Html::trusted(std::move(markup));
}

}  // namespace deadshore::io
