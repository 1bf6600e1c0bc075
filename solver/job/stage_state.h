#pragma once

#include "mesh/quad_mesh.h"
#include "solver/job/job.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace deadshore::solver {

/// Group of blocks (`mesh::WallBlock::group`) of the pockets for the permanent beam's ends.
inline constexpr std::size_t pockets_group = 0;
/// Group of blocks of the padstones.
inline constexpr std::size_t padstones_group = 1;

/// How a needle stands at a stage.
enum class NeedleState { not_yet, fitted, preloaded, released };

/// What is there and what acts after some stages of the work: no displacements, no forces.
struct StageState {
  double day = 0.0;                  ///< of the last stage, from the start of the work
  bool cut_out = false;              ///< the masonry of the cut
  bool pockets_out = false;          ///< the masonry of the pockets for the beam and its padstones
  std::vector<char> lintel_out;      ///< in the job's order
  bool padstones = false;            ///< in place
  bool beam = false;                 ///< in place
  std::optional<double> packed_on;   ///< day on which the beam was packed
  std::vector<NeedleState> needles;  ///< in the job's order
  std::vector<char> shore_tight;     ///< in the job's order
  std::vector<double> line_load_share;   ///< of each line load, 0 to 1, that stands on the wall
  std::vector<double> point_load_share;  ///< same for point loads

  /// Whether a region of the whole wall's mesh is out (see solver/fem/job_mesh.h).
  [[nodiscard]] bool is_out(mesh::Region region) const;

  /// Age of the packing in days; none before it is packed.
  [[nodiscard]] std::optional<double> packing_age() const;
};

/// The state before any work: nothing is out, all loads are on.
[[nodiscard]] StageState state_before(const Job& job);

/// Changes a state by one operation.
/// \pre the job has what it is done to
void carry_out_in(StageState& state, const Job& job, const Operation& operation);

/// The state after one more stage. The stage must have no faults (see stage_faults.h).
[[nodiscard]] StageState state_after(const Job& job, StageState state, const Stage& stage);

/// The only stage of a job whose sequence is `at_once`: the cut out and every needle in, jacked
/// where it has a preload.
[[nodiscard]] Stage stage_at_once(const Job& job);

/// The state after each stage of a sequence.
[[nodiscard]] std::vector<StageState> states_of(const Job& job, const std::vector<Stage>& stages);

/// Characteristic loads of the job that do not stand on the wall in a state: dead shores have them,
/// or they are off it. N.
[[nodiscard]] double load_off(const Job& job, const StageState& state);

/// Weight that the permanent beam's works bring into the wall in a state, less that of the masonry
/// which they replace, N.
[[nodiscard]] double weight_of_works(const Job& job, const StageState& state);

/// Whether the same masonry, lintels and padstones are there in two states.
[[nodiscard]] bool same_masonry(const StageState& a, const StageState& b);

/// Whether a needle is there to push.
[[nodiscard]] constexpr bool is_in(NeedleState needle) {
  return needle == NeedleState::fitted || needle == NeedleState::preloaded;
}

}  // namespace deadshore::solver
