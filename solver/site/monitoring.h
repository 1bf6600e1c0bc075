#pragma once

#include "mesh/plane.h"
#include "mesh/wall_mesher.h"
#include "solver/job/job.h"
#include "solver/stages/stage_result.h"

#include <cstddef>
#include <span>
#include <vector>

/// Marks on the wall, how far they are expected to move, and when to stop. mm, down positive.
namespace deadshore::solver {

enum class MarkPlace { left_pier, over_needle, middle_of_cut, right_pier };

/// A mark that is read before and after every step, just above the soffit.
struct MonitoringMark {
  MarkPlace place = MarkPlace::middle_of_cut;
  std::size_t needle = 0;  ///< index in the job, of a mark over one
  mesh::Point at;

  /// Downward movement since the first stage, one for each stage that was come to: the largest of
  /// all analyses. NaN where nothing sound is near the mark, or an analysis does not stand.
  std::vector<double> movement;
};

/// What is expected of all marks together in one stage. NaN where it is not known.
struct StageMovement {
  double expected = not_known;  ///< most that any mark moves
  double stop_at = not_known;   ///< `stop_value`; not of the first stage, which sets the zero
  /// Whether what is expected is already past what any stop value may be: the engineer has to set
  /// one before the stage is begun.
  bool past_stop = false;
};

struct Monitoring {
  std::vector<MonitoringMark> marks;  ///< over the needles, the middle of the cut and both piers,
                                      ///< from left to right
  double slight_damage = 0.0;         ///< `movement_at_slight_damage`
  std::vector<StageMovement> stages;  ///< one for each stage that was come to
};

/// Marks of the job's wall with what the stages make them expect. Movements are known where the
/// work was followed from the wall as built: nothing is done in the first stage. \param wall the
/// mesh that the stages' fields are on
[[nodiscard]] Monitoring monitoring_of(const Job& job, const mesh::WallMesh& wall,
                                       std::span<const StageResult> stages);

/// Downward movement in the middle of the cut at which the wall above it, as a deep beam over the
/// cut alone, comes to category 2 (slight) of the damage scale. See solver/cracks/damage_scale.h.
[[nodiscard]] double movement_at_slight_damage(const Job& job);

/// The movement at which to stop: 1.5 times the most expected, rounded up to 0.5 mm, no less than
/// 1 mm, and never more than `slight_damage` rounded down to 0.1 mm. NaN where nothing is expected
/// that is known, or where what is expected is itself past that. Our rule: common practice, no
/// source.
[[nodiscard]] double stop_value(double expected, double slight_damage);

}  // namespace deadshore::solver
