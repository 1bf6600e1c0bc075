#pragma once

#include "mesh/quad_mesh.h"
#include "solver/job/job.h"

namespace deadshore::benchmarks {

/// An invented wall of 6.0 x 5.2 m with two windows, over a 4.8 m cut and on four needles, meshed
/// for about `unknowns` displacements.
[[nodiscard]] solver::Job invented_wall(mesh::QuadOrder element, double unknowns);

}  // namespace deadshore::benchmarks
