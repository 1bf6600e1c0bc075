#pragma once

#include "mesh/plane.h"
#include "mesh/quad_mesh.h"

#include <span>
#include <vector>
namespace deadshore::mesh {

/// Some of the quadrilaterals of a mesh, as a mesh of their own.
struct MeshPart {
  QuadMesh quads;            ///< keeps all regions; chains lose the sides that are not there
  std::vector<int> node_of;  ///< of each node of the part, its number in the whole mesh
  std::vector<int> quad_of;  ///< of each quadrilateral, likewise
};

/// Takes the quadrilaterals of some regions out of a mesh, in their order, with the nodes that they
/// use.
/// \param keep_region one entry per region of `whole`, not 0 where it is kept
[[nodiscard]] MeshPart part_of(const QuadMesh& whole, std::span<const char> keep_region);

/// Connected components of the marked quadrilaterals, two of which are neighbours where they share
/// a node. Components stand in the order of their first members, each with its members ascending.
/// \param marked one per quadrilateral, not 0 where it takes part
[[nodiscard]] std::vector<std::vector<int>> connected_parts(const QuadMesh& mesh,
                                                            std::span<const char> marked);

/// Bounding box of quadrilaterals, mm, by their corners.
[[nodiscard]] Box box_around(const QuadMesh& mesh, std::span<const int> quads);

/// Checks that every connected part of the mesh stands on something: a side of the chains
/// `base_left`, `base_right` or `base_cut`, or a side of `soffit` over one of `bearings`.
/// \param bearings where needles will bear, x in mm
/// \throws GeometryError saying where a part hangs on nothing.
void refuse_hanging_parts(const QuadMesh& mesh, std::span<const Interval> bearings);

}  // namespace deadshore::mesh
