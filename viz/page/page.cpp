#include "viz/page/page.h"

#include <cmath>
#include <numbers>

namespace deadshore::viz {

Loop circle_at(PagePoint middle, double radius) {
  constexpr int sides = 24;
  Loop circle;
  for (int i = 0; i < sides; ++i) {
    const double turn = 2.0 * std::numbers::pi * i / sides;
    circle.push_back({middle.x + radius * std::cos(turn), middle.y + radius * std::sin(turn)});
  }
  return circle;
}

}  // namespace deadshore::viz
