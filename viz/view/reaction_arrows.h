#pragma once

#include "viz/view/shown_result.h"

#include <array>
#include <string>
#include <vector>

/// Where the reactions are drawn.
namespace deadshore::viz {

/// A support with the force that it gives the wall at one stage under one analysis.
struct SupportArrow {
  std::string name;
  std::array<double, 3> at{};     ///< where it presses, mm, on the face of the wall
  std::array<double, 2> force{};  ///< x to the right, y up, kN
  bool is_needle = false;
};

/// The supports of that stage, from left to right: a needle only while it is in, the rest only
/// where it gives a force.
[[nodiscard]] std::vector<SupportArrow> support_arrows(const ShownResult& result, std::size_t stage,
                                                       std::size_t analysis);

/// The largest reaction through all stages and analyses, kN; the scale of the arrows.
[[nodiscard]] double largest_reaction(const ShownResult& result);

}  // namespace deadshore::viz
