#pragma once

#include "mesh/plane.h"
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

/// The marked quadrilaterals in groups that hang together by shared nodes, in the order of their
/// first members.
/// \param marked one per quadrilateral, not 0 where it takes part
[[nodiscard]] std::vector<std::vector<int>> connected_parts(const QuadMesh& mesh,
                                                            std::span<const char> marked);

/// Smallest upright box around quadrilaterals, mm.
[[nodiscard]] Box box_around(const QuadMesh& mesh, std::span<const int> quads);

/// Every part of the mesh (joined by shared nodes) must stand on something: "base left",
/// "base right" or "base cut", or a stretch of "soffit" over one of `bearings`.
/// \throws GeometryError saying where a part hangs on nothing.
void refuse_hanging_parts(const QuadMesh& mesh, std::span<const Interval> bearings);

}  // namespace deadshore::mesh
