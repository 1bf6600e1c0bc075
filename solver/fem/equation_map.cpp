#include "solver/fem/equation_map.h"

#include "solver/fem/nested_dissection.h"

namespace deadshore::solver {

EquationMap::EquationMap(const mesh::QuadMesh& mesh, std::span<const Support> supports,
                         int further_nodes)
    : equation_(2 * (mesh.nodes.size() + static_cast<std::size_t>(further_nodes)), 0) {
  for (const Support& support : supports) {
    equation_[place_of(support.node, support.component)] = -1;
  }
  std::vector<int> order = nested_dissection(mesh);
  for (int i = 0; i < further_nodes; ++i) order.push_back(mesh.node_count() + i);
  for (const int node : order) {
    for (int component = 0; component < 2; ++component) {
      int& equation = equation_[place_of(node, component)];
      if (equation == 0) equation = count_++;
    }
  }
}

}  // namespace deadshore::solver
