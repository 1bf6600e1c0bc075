#include "io/note/inline_svg.h"
#include "io/note/sections.h"

#include <fmt/format.h>

#include <cstdlib>
#include <string>

namespace deadshore::io {
namespace {

constexpr double widest_upright = 600.0;  ///< points; wider does not fit a page that stands

/// Whether a figure takes a page on its side.
bool is_wide(const std::string& svg) {
  constexpr std::string_view key = " width=\"";
  const std::size_t at = svg.find(key, svg.find("<svg"));
  return at != std::string::npos &&
         std::strtod(svg.c_str() + at + key.size(), nullptr) > widest_upright;
}

}  // namespace

Html figures_section(std::span<const viz::Figure> figures) {
  Html body;
  int number = 0;
  for (const viz::Figure& figure : figures) {
    ++number;
    const Html picture = inline_svg(figure.svg, fmt::format("figure-{}-", number), figure.caption);
    const Html caption =
        Html::trusted(fmt::format("<strong>Figure {}.</strong> ", number)) + text(figure.caption);
    body += Html::trusted(fmt::format("<figure data-figure=\"{}\"{}>\n", escape_html(figure.name),
                                      is_wide(figure.svg) ? " class=\"wide\"" : "")) +
            element("div", picture, "scroll") + element("figcaption", caption) +
            Html::trusted("</figure>\n");
  }
  if (figures.empty()) body = paragraph("No figures were drawn.");
  return section("figures", "Figures", body);
}

}  // namespace deadshore::io
