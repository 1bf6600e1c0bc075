#pragma once

#include "mesh/quad_mesh.h"
#include "solver/job/job.h"
#include "solver/job/stage_state.h"
#include "solver/limit/bound_problem.h"

namespace deadshore::solver {

/// How large the triangles of a bound problem may be, mm; between what is fine and the rest they
/// grow by half of the distance.
struct BoundSizes {
  double at_ends = 50.0;      ///< of bearings, short loads and openings' and the cut's corners
  double at_soffits = 100.0;  ///< along edges that face down
  int most_triangles = 6000;
};

/// A job's wall at a stage for strict bounds, on triangles that follow every end of a bearing or
/// load. Needles, packing and tight dead shores push up as far as they are in.
///
/// \param quads the quadrilaterals that are there at the stage
/// \throws SolveError if part of a load has no masonry to stand on
[[nodiscard]] BoundProblem wall_bound_problem(const Job& job, const StageState& state,
                                              const mesh::QuadMesh& quads,
                                              const BoundSizes& sizes);

}  // namespace deadshore::solver
