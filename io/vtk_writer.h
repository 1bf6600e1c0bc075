#pragma once

#include "solver/model/results.h"

#include <filesystem>

namespace deadshore::io {

/// Writes the analyses into `folder`, which must exist, as VTK XML files (binary, appended):
///
/// - `wall-STAGE-MODEL.vtu`, or `wall-NUMBER-STAGE-MODEL.vtu` where the work is followed stage by
///   stage: the mesh without what is taken out at that stage, and as point data "displacement
///   [mm]", "stress [N/mm2]" (xx, yy, xy; tension positive), "principal stress, major [N/mm2]" and
///   "..., minor [N/mm2]" with "direction of major" and "direction of minor" (unit vectors), and
///   "mechanism without tension" (velocity, largest 1) where there is one; as cell data "mean
///   stress [N/mm2]", "crack strain" (xx, yy, xy; tensor shear), "largest crack strain", "loose"
///   (1 = would fall), "material" (name) and "material index"; as field data the stage, the model
///   and the day. An analysis without equilibrium has no displacement, stress or strain. Lengths
///   in mm.
/// - `wall.pvd`: lists them. Followed stage by stage, the time step is the stage's number from 0
///   and the part the model (0 uncracked, 1 cracked); else the time step only counts.
/// - `supports.vtp`: a point for each needle (middle of its bearing), pier (middle of its base) and
///   held end, with "name", and for each analysis "reaction STAGE MODEL [kN]" as a vector; the hand
///   method's as "reaction hand [kN]". Stage by stage also the base under the cut, the joists of
///   dead shores, the bearings of the permanent beam (what pushes the beam up), and beam and
///   padstones as faces, with "part" on cells.
///
/// \throws FileError if a file cannot be written.
void write_vtk(const solver::JobResult& result, const std::filesystem::path& folder);

}  // namespace deadshore::io
