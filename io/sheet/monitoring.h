#pragma once

#include "mesh/plane.h"
#include "solver/result/results.h"

#include <span>
#include <string>
#include <vector>

/// Marks on the wall, how far they are expected to move, and when to stop. mm, down positive.
namespace deadshore::io {

/// A mark that is read before and after every step.
struct MonitoringMark {
  std::string name;   ///< "M1", from left to right
  std::string where;  ///< "over needle N1", "over the middle of the cut", "left pier"
  mesh::Point at;

  /// Downward movement since the first stage, one for each stage that was come to: the largest of
  /// all analyses. NaN where nothing sound is near the mark, or an analysis does not stand.
  std::vector<double> movement;
};

/// Over each needle, over the middle of the cut and on both piers, all just above the soffit.
[[nodiscard]] std::vector<MonitoringMark> monitoring_marks(const solver::JobResult& result);

/// The largest movement of any mark in one stage; NaN where that of none is known.
[[nodiscard]] double most_movement(std::span<const MonitoringMark> marks, std::size_t stage);

/// Downward movement in the middle of the cut at which the wall above it, as a deep beam over the
/// cut alone, comes to category 2 (slight) of the damage scale. See solver/cracks/damage_scale.h.
[[nodiscard]] double movement_at_slight_damage(const solver::Job& job);

/// The movement at which to stop: 1.5 times the most expected, rounded up to 0.5 mm, no less than
/// 1 mm, and never more than `slight_damage` rounded down to 0.1 mm. NaN where nothing is expected
/// that is known, or where what is expected is itself past that. Our rule: common practice, no
/// source.
[[nodiscard]] double stop_value(double expected, double slight_damage);

/// The rule in words, with this job's figure.
[[nodiscard]] std::string stop_rule(double slight_damage);

}  // namespace deadshore::io
