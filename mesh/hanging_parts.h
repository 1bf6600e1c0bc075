#pragma once

#include "mesh/plane.h"
#include "mesh/quad_mesh.h"

#include <span>

namespace deadshore::mesh {

/// Every part of the mesh (joined by shared nodes) must stand on something: "base left",
/// "base right" or "base cut", or a stretch of "soffit" over one of `bearings`.
/// \throws GeometryError saying where a part hangs on nothing.
void refuse_hanging_parts(const QuadMesh& mesh, std::span<const Interval> bearings);

}  // namespace deadshore::mesh
