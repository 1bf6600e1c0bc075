#include "io/note/figure_shelf.h"

#include "io/note/inline_svg.h"

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

FigureShelf::FigureShelf(std::span<const viz::Figure> figures)
    : figures_(figures), taken_(figures.size(), false) {}

Html FigureShelf::take(std::string_view name) {
  for (std::size_t i = 0; i < figures_.size(); ++i) {
    if (!taken_[i] && figures_[i].name == name) return placed(i);
  }
  return {};
}

Html FigureShelf::take_all(std::string_view beginning) {
  Html all;
  for (std::size_t i = 0; i < figures_.size(); ++i) {
    if (!taken_[i] && figures_[i].name.starts_with(beginning)) all += placed(i);
  }
  return all;
}

Html FigureShelf::placed(std::size_t index) {
  const viz::Figure& figure = figures_[index];
  taken_[index] = true;
  ++count_;
  const Html picture = inline_svg(figure.svg, fmt::format("figure-{}-", count_), figure.caption);
  const Html caption =
      Html::trusted(fmt::format("<strong>Figure {}.</strong> ", count_)) + text(figure.caption);
  return Html::trusted(fmt::format("<figure data-figure=\"{}\"{}>\n", escape_html(figure.name),
                                   is_wide(figure.svg) ? " class=\"wide\"" : "")) +
         element("div", picture, "scroll") + element("figcaption", caption) +
         Html::trusted("</figure>\n");
}

}  // namespace deadshore::io
