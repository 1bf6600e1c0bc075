#include "solver/limit/quad_elements.h"

#include "solver/fem/index.h"
#include "solver/fem/quad_shape.h"
#include "solver/job/error.h"

namespace deadshore::solver {

ElementMatrices quad_elements(const mesh::QuadMesh& mesh, const EquationMap& equations,
                              std::span<const double> thickness) {
  if (mesh.order != mesh::QuadOrder::eight_node) {
    throw SolveError("limit analysis: elements of 8 nodes are due");
  }
  constexpr int nodes = 8;
  const QuadGeometry geometry(mesh);
  ElementMatrices matrices{quad_points, 2 * nodes, equations.count(), {}, {}};
  for (const int node : mesh.connectivity) {
    for (const int component : {0, 1})
      matrices.numbers.push_back(equations.equation(node, component));
  }
  matrices.values.resize(matrices.numbers.size() * 3 * quad_points);
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    for (int point = 0; point < quad_points; ++point) {
      const auto g = geometry.gradient<nodes>(quad, point);
      const double volume = geometry.area(quad, point) * thickness[index_of(quad)];
      auto B = matrices.of(quad, point);
      for (int i = 0; i < nodes; ++i) {
        B.col(2 * i) << volume * g(0, i), volume * g(0, i), volume * g(1, i);
        B.col(2 * i + 1) << volume * g(1, i), -volume * g(1, i), volume * g(0, i);
      }
    }
  }
  return matrices;
}

}  // namespace deadshore::solver
