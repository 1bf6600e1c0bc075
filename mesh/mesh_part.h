#pragma once

#include "mesh/quad_mesh.h"

#include <span>
#include <vector>

namespace deadshore::mesh {

/// Some of the quadrilaterals of a mesh, as a mesh of their own.
struct MeshPart {
  QuadMesh quads;            ///< keeps all regions; chains lose the sides that are not there
  std::vector<int> node_of;  ///< number in the whole mesh of each node of the part
  std::vector<int> quad_of;  ///< same for quadrilaterals
};

/// The quadrilaterals whose region is kept (`keep_region` has one entry per region), in their
/// order, and the nodes that they use.
[[nodiscard]] MeshPart part_of(const QuadMesh& whole, std::span<const char> keep_region);

}  // namespace deadshore::mesh
