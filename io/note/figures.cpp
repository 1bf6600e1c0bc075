#include "io/note/inline_svg.h"
#include "io/note/sections.h"

#include <fmt/format.h>

namespace deadshore::io {

Html figures_section(std::span<const viz::Figure> figures) {
  Html body;
  int number = 0;
  for (const viz::Figure& figure : figures) {
    ++number;
    const Html picture = inline_svg(figure.svg, fmt::format("figure-{}-", number), figure.caption);
    const Html caption =
        Html::trusted(fmt::format("<strong>Figure {}.</strong> ", number)) + text(figure.caption);
    body += element("figure", element("div", picture, "scroll") + element("figcaption", caption));
  }
  if (figures.empty()) body = paragraph("No figures were drawn.");
  return section("figures", "Figures", body);
}

}  // namespace deadshore::io
