#include "solver/limit/safety_order.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace deadshore::solver {

namespace {

/// Whether `b` is set wherever `a` is.
bool is_within(const std::vector<char>& a, const std::vector<char>& b) {
  return std::ranges::equal(a, b, [](char x, char y) { return x == 0 || y != 0; });
}

bool is_no_less(const std::vector<double>& a, const std::vector<double>& b) {
  return std::ranges::equal(a, b, [](double x, double y) { return x >= y; });
}

bool pushes_no_more(const StageState& a, const StageState& b) {
  if (b.packed_on) return true;
  if (a.packed_on) return false;
  return std::ranges::equal(a.needles, b.needles, [](NeedleState x, NeedleState y) {
    return !is_in(x) || is_in(y);
  });
}

}  // namespace

bool same_for_safety(const StageState& a, const StageState& b) {
  const auto in = [](NeedleState needle) { return is_in(needle); };
  return same_masonry(a, b) && a.packed_on.has_value() == b.packed_on.has_value() &&
         (a.packed_on || std::ranges::equal(a.needles, b.needles, {}, in, in)) &&
         a.shore_tight == b.shore_tight && a.line_load_share == b.line_load_share &&
         a.point_load_share == b.point_load_share;
}

bool is_held_no_better(const StageState& a, const StageState& b) {
  const bool has_no_more_masonry = (a.cut_out || !b.cut_out) && (a.pockets_out || !b.pockets_out) &&
                                   (!a.padstones || b.padstones || !b.pockets_out) &&
                                   is_within(b.lintel_out, a.lintel_out);
  return has_no_more_masonry && pushes_no_more(a, b) && is_within(a.shore_tight, b.shore_tight) &&
         is_no_less(a.line_load_share, b.line_load_share) &&
         is_no_less(a.point_load_share, b.point_load_share);
}

void put_in_order(std::span<const StageState> states,
                  std::span<std::optional<StageSafety>> safety) {
  for (std::size_t i = 0; i < safety.size(); ++i) {
    if (!safety[i]) continue;
    StageSafety& own = *safety[i];
    double least = own.factor;
    for (std::size_t k = 0; k < safety.size(); ++k) {
      if (k == i || !safety[k] || !is_held_no_better(states[i], states[k])) continue;
      least = std::min(least, safety[k]->factor);
      if (same_masonry(states[i], states[k])) {
        own.upper_factor = std::min(own.upper_factor, safety[k]->upper_factor);
      }
    }
    if (least < own.factor) {
      own.verdict += fmt::format(
          " Counted as {:.2f}: another stage, with no less to hold it, has no more.",
          std::floor(100.0 * least) / 100.0);
      own.factor = least;
    }
  }
}

}  // namespace deadshore::solver
