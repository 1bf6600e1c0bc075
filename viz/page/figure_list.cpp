#include "viz/page/figure_list.h"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <cctype>
#include <cmath>
#include <future>
#include <thread>
#include <utility>

namespace deadshore::viz {
namespace {

constexpr double pixels_per_point = 1600.0 / page_width;  // pictures are 1600 pixels wide

int pixels_across(const Drawing& drawing) {
  return static_cast<int>(std::lround(pixels_per_point * drawing.size.width));
}

}  // namespace

void FigureList::add(const Drawing& drawing, const std::string& name, const std::string& caption) {
  std::string free_name = name;
  const auto is_taken = [&](const Figure& figure) { return figure.name == free_name; };
  for (int number = 2; std::any_of(figures_.begin(), figures_.end(), is_taken); ++number)
    free_name = fmt::format("{}-{}", name, number);
  figures_.push_back({free_name, caption, drawing, "", "", ""});
}

std::vector<Figure> FigureList::draw() {
  std::atomic<std::size_t> next = 0;
  const auto draw_some = [&] {
    for (std::size_t i = next++; i < figures_.size(); i = next++) {
      Figure& figure = figures_[i];
      figure.svg = to_svg(figure.drawing);
      figure.pdf = to_pdf(figure.drawing);
      figure.png = to_png(figure.drawing, pixels_across(figure.drawing));
    }
  };
  {
    std::vector<std::future<void>> others;
    for (unsigned thread = 1; thread < std::thread::hardware_concurrency(); ++thread)
      others.push_back(std::async(std::launch::async, draw_some));
    draw_some();
    for (std::future<void>& other : others) other.get();
  }
  return std::exchange(figures_, {});
}

std::string file_word(std::string name) {
  for (char& letter : name)
    if (std::isalnum(static_cast<unsigned char>(letter)) == 0) letter = '-';
  return name;
}

}  // namespace deadshore::viz
