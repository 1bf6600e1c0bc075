#include "viz/figure_list.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>

namespace deadshore::viz {
namespace {

constexpr double pixels_per_point = 1600.0 / page_width;

}  // namespace

void FigureList::add(const Drawing& drawing, const std::string& name, const std::string& caption) {
  std::string free_name = name;
  const auto is_taken = [&](const Figure& figure) { return figure.name == free_name; };
  for (int number = 2; std::any_of(figures_.begin(), figures_.end(), is_taken); ++number)
    free_name = fmt::format("{}-{}", name, number);
  const int pixels = static_cast<int>(std::lround(pixels_per_point * drawing.size.width));
  figures_.push_back({free_name, caption, to_svg(drawing), to_png(drawing, pixels)});
}

std::string file_word(std::string name) {
  for (char& letter : name)
    if (std::isalnum(static_cast<unsigned char>(letter)) == 0) letter = '-';
  return name;
}

}  // namespace deadshore::viz
