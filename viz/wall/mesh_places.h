#pragma once

#include "mesh/quad_mesh.h"
#include "solver/fem/quad_finder.h"

#include <array>
#include <optional>
#include <span>
#include <vector>

namespace deadshore::viz {

/// A point of a mesh: what each node of its quadrilateral counts there.
struct NodeShares {
  std::span<const int> nodes;
  std::array<double, 8> shares{};  ///< one for each of `nodes`; they add up to 1
};

/// Finds points in a mesh, to interpolate by the elements' shape functions.
class MeshPlaces {
 public:
  /// Quadrilaterals whose mark in `chosen` is 0 are not there; empty: all are. The mesh must
  /// outlive it.
  explicit MeshPlaces(const mesh::QuadMesh& mesh, std::vector<char> chosen = {});

  /// Nothing outside the quadrilaterals that are there.
  [[nodiscard]] std::optional<NodeShares> at(mesh::Point p) const;

 private:
  const mesh::QuadMesh& mesh_;
  std::vector<char> chosen_;
  solver::QuadFinder finder_;
};

}  // namespace deadshore::viz
