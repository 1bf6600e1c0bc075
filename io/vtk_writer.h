#pragma once

#include "solver/model/results.h"

#include <filesystem>

namespace deadshore::io {

/// Writes the analyses into `folder`, which must exist, as VTK XML files (binary, appended):
///
/// - `wall-STAGE-MODEL.vtu`: the mesh, and as point data "displacement [mm]", "stress [N/mm2]"
///   (xx, yy, xy; tension positive), "principal stress, major [N/mm2]" and "..., minor [N/mm2]"
///   with "direction of major" and "direction of minor" (unit vectors); as cell data "mean stress
///   [N/mm2]", "crack strain" (xx, yy, xy; tensor shear), "largest crack strain", "loose" (1 =
///   would fall), "material" (name) and "material index". An analysis without equilibrium has no
///   displacement, stress or strain. Lengths in mm.
/// - `wall.pvd`: lists them; its time step only counts, model by model and stage by stage.
/// - `supports.vtp`: a point for each needle (middle of its bearing), pier (middle of its base) and
///   held end, with "name", and for each analysis "reaction STAGE MODEL [kN]" as a vector; the hand
///   method's as "reaction hand [kN]".
///
/// \throws FileError if a file cannot be written.
void write_vtk(const solver::JobResult& result, const std::filesystem::path& folder);

}  // namespace deadshore::io
