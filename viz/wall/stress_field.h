#pragma once

#include "solver/fem/plane_tensor.h"
#include "viz/wall/mesh_places.h"

#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace deadshore::viz {

/// Stress at a point of the wall, N/mm2, tension positive; nothing where there is none to show.
using StressAt = std::function<std::optional<solver::PlaneTensor>(mesh::Point)>;

/// Stresses given at the nodes, between them by the elements' shape functions: of tensors, so that
/// principal directions are found at the point itself. Nothing outside the mesh, in quadrilaterals
/// whose mark in `chosen` is 0 (empty: all count) and where a value at a node is not finite.
class StressField {
 public:
  /// Mesh and stresses (one for each node, else the field is empty) must outlive it.
  StressField(const mesh::QuadMesh& mesh, std::span<const solver::PlaneTensor> node_stress,
              std::vector<char> chosen = {});

  [[nodiscard]] std::optional<solver::PlaneTensor> at(mesh::Point p) const;

 private:
  std::span<const solver::PlaneTensor> stress_;
  MeshPlaces places_;
};

}  // namespace deadshore::viz
