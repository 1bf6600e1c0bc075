#pragma once

#include "solver/job/job.h"

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace deadshore::solver {

/// How a needle stands at a stage.
enum class NeedleState { not_yet, fitted, preloaded, released };

/// What is there and what acts after some stages of the work: no displacements, no forces.
struct StageState {
  double day = 0.0;
  std::set<std::string> removed;    ///< regions of the mesh that are out: "cut", "pockets", lintels
  bool padstones = false;           ///< in place
  bool beam = false;                ///< in place
  std::optional<double> packed_on;  ///< day on which the beam was packed
  std::vector<NeedleState> needles;      ///< in the job's order
  std::vector<char> shore_tight;         ///< in the job's order
  std::vector<double> line_load_share;   ///< of each line load, 0 to 1, that stands on the wall
  std::vector<double> point_load_share;  ///< same for point loads

  [[nodiscard]] bool is_out(const std::string& region) const { return removed.contains(region); }

  /// Age of the packing in days; none before it is packed.
  [[nodiscard]] std::optional<double> packing_age() const;
};

/// Before any work: nothing is out, all loads on.
[[nodiscard]] StageState state_before(const Job& job);

/// The state after one more stage. The stage must have no faults (see stage_faults.h).
[[nodiscard]] StageState state_after(const Job& job, StageState state, const Stage& stage);

/// The only stage of a job at once: the cut out and every needle in, jacked where it has a preload.
[[nodiscard]] Stage stage_at_once(const Job& job);

/// The state after each stage of a sequence.
[[nodiscard]] std::vector<StageState> states_of(const Job& job, const std::vector<Stage>& stages);

/// Characteristic loads of the job that do not stand on the wall in a state: dead shores have them,
/// or they are off it. N.
[[nodiscard]] double load_off(const Job& job, const StageState& state);

/// Whether a needle is there to push.
[[nodiscard]] constexpr bool is_in(NeedleState needle) {
  return needle == NeedleState::fitted || needle == NeedleState::preloaded;
}

}  // namespace deadshore::solver
