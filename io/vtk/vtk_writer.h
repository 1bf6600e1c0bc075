#pragma once

#include "solver/result/results.h"

#include <filesystem>

namespace deadshore::io {

/// Writes the analyses into `folder`, which must exist, as VTK XML files (binary, appended):
///
/// - `wall-STAGE-MODEL.vtu`, or `wall-NUMBER-STAGE-MODEL.vtu` where the work is followed stage by
///   stage: the mesh without what is taken out at that stage. An analysis without equilibrium has
///   no displacement, stress or strain.
/// - `wall.pvd`: lists them. Followed stage by stage, the time step is the stage's number from 0
///   and the part the model (0 uncracked, 1 cracked); else the time step only counts.
/// - `supports.vtp`: a point for each needle (middle of its bearing), pier (middle of its base) and
///   held end. Stage by stage also the base under the cut, the joists of dead shores, the bearings
///   of the permanent beam (what pushes the beam up), and beam and padstones as faces.
/// - `needles.vtp`, where needles have frames: needles and props as lines, under the load that they
///   are checked for.
/// - `beam.pvd` and a `beam-NUMBER-STAGE-MODEL.vtp` for each analysis in which the permanent beam
/// is
///   in: the beam as a line; time steps and parts as in `wall.pvd`.
/// - `README.txt`: every field of these files with its unit; `vtk_fields.h` lists them. Lengths in
///   mm.
///
/// \throws FileError if a file cannot be written.
void write_vtk(const solver::JobResult& result, const std::filesystem::path& folder);

}  // namespace deadshore::io
