#pragma once

#include "mesh/plane.h"
#include "solver/job/job.h"
#include "solver/job/stage_state.h"
#include "solver/limit/bound_wall.h"

#include <span>
#include <vector>

namespace deadshore::solver {

/// Strict bounds on the factor of the wall at one stage without tension, once the masonry that
/// nothing holds is gone.
///
/// Without tension nothing holds the layer under a flat soffit, however thin: triangles beside an
/// edge that faces down weigh nothing here (`fringe`). Where the rest does not stand with its loose
/// masonry, that is taken out as well, triangles and all. `let_go` is the weight of both.
struct StageBounds {
  double lower = 0.0;
  double upper = 0.0;
  double let_go = 0.0;         ///< N; in neither bound
  double fringe = 0.0;         ///< N, part of it
  double tension = 0.0;        ///< largest principal stress of the lower bound's masonry, N/mm2
  double out_of_balance = 0.0; ///< of the lower bound's forces, over the largest load
  mesh::Point gives_way;       ///< where the upper bound's mechanism takes most work
  int iterations = 0;          ///< factorisations
  BoundProblem problem;        ///< what was left when the masonry was gone
  std::vector<mesh::Point> velocity;  ///< of its nodes in the mechanism, largest 1
};

/// The mechanism's velocities at points, 2 for each; 0 where there is no masonry any more.
[[nodiscard]] std::vector<double> velocities_at(const StageBounds& bounds,
                                                std::span<const mesh::Point> points);

/// \throws SolveError if part of a load has no masonry to stand on; mesh::GeometryError
[[nodiscard]] StageBounds stage_bounds(const Job& job, const StageState& state,
                                       const BoundSizes& sizes = {});

}  // namespace deadshore::solver
