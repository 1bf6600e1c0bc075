#pragma once

#include "mesh/quad_mesh.h"

#include <span>
#include <vector>

namespace deadshore::solver {

/// A displacement that is given: `component` 0 along x, 1 along y; `value` in mm.
struct Support {
  int node = 0;
  int component = 0;
  double value = 0.0;
};

/// Equation numbers of the free displacements, in an order that keeps the Cholesky factor sparse.
class EquationMap {
 public:
  /// \param further_nodes nodes behind the mesh's, such as those of a beam; they come last
  EquationMap(const mesh::QuadMesh& mesh, std::span<const Support> supports, int further_nodes = 0);

  /// Equation of a node's displacement, or -1 where a support gives it.
  [[nodiscard]] int equation(int node, int component) const {
    return equation_[place_of(node, component)];
  }

  [[nodiscard]] int count() const { return count_; }

 private:
  [[nodiscard]] static std::size_t place_of(int node, int component) {
    return 2 * static_cast<std::size_t>(node) + static_cast<std::size_t>(component);
  }

  std::vector<int> equation_;
  int count_ = 0;
};

}  // namespace deadshore::solver
