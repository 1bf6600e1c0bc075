#include "solver/panel/equation_map.h"

#include <algorithm>
#include <numeric>

namespace deadshore::solver {

namespace {

constexpr std::size_t smallest_part = 6;  // quads; below this the order no longer matters

/// Numbers nodes from the last position to the first: separators first, then the two halves.
class Dissection {
 public:
  explicit Dissection(const mesh::QuadMesh& mesh)
      : mesh_(mesh),
        centre_(static_cast<std::size_t>(mesh.quad_count())),
        mark_(mesh.nodes.size(), 0),
        placed_(mesh.nodes.size(), false),
        order_(mesh.nodes.size(), -1),
        next_(mesh.node_count() - 1) {
    for (int quad = 0; quad < mesh.quad_count(); ++quad) {
      mesh::Point& centre = centre_[static_cast<std::size_t>(quad)];
      for (const mesh::Point& corner : mesh::corners_of(mesh, quad)) {
        centre.x += 0.25 * corner.x;
        centre.y += 0.25 * corner.y;
      }
    }
  }

  std::vector<int> run() {
    std::vector<int> quads(centre_.size());
    std::iota(quads.begin(), quads.end(), 0);
    split(quads);
    for (int node = 0; node < mesh_.node_count(); ++node) place(node);  // nodes of no quad
    return order_;
  }

 private:
  void place(int node) {
    if (placed_[static_cast<std::size_t>(node)]) return;
    placed_[static_cast<std::size_t>(node)] = true;
    order_[static_cast<std::size_t>(next_--)] = node;
  }

  void split(std::span<int> quads) {
    if (quads.size() <= smallest_part) {
      for (const int quad : quads) {
        for (const int node : mesh_.nodes_of(quad)) place(node);
      }
      return;
    }
    const bool along_x = extent(quads, &mesh::Point::x) >= extent(quads, &mesh::Point::y);
    const auto axis = along_x ? &mesh::Point::x : &mesh::Point::y;
    const auto other = along_x ? &mesh::Point::y : &mesh::Point::x;
    const auto middle = quads.begin() + static_cast<std::ptrdiff_t>(quads.size() / 2);
    std::nth_element(quads.begin(), middle, quads.end(), [&](int a, int b) {
      const mesh::Point& pa = centre_[static_cast<std::size_t>(a)];
      const mesh::Point& pb = centre_[static_cast<std::size_t>(b)];
      return pa.*axis != pb.*axis ? pa.*axis < pb.*axis : pa.*other < pb.*other;
    });
    const std::span<int> first(quads.begin(), middle);
    const std::span<int> second(middle, quads.end());
    place_shared(first, second, other);
    split(second);
    split(first);
  }

  void place_shared(std::span<const int> first, std::span<const int> second,
                    double mesh::Point::*along) {
    ++stamp_;
    for (const int quad : first) {
      for (const int node : mesh_.nodes_of(quad)) mark_[static_cast<std::size_t>(node)] = stamp_;
    }
    std::vector<int> shared;
    for (const int quad : second) {
      for (const int node : mesh_.nodes_of(quad)) {
        int& mark = mark_[static_cast<std::size_t>(node)];
        if (mark != stamp_ || placed_[static_cast<std::size_t>(node)]) continue;
        mark = 0;
        shared.push_back(node);
      }
    }
    std::sort(shared.begin(), shared.end(), [&](int a, int b) {
      return mesh_.nodes[static_cast<std::size_t>(a)].*along <
             mesh_.nodes[static_cast<std::size_t>(b)].*along;
    });
    for (const int node : shared) place(node);
  }

  [[nodiscard]] double extent(std::span<const int> quads, double mesh::Point::*axis) const {
    const auto [low, high] = std::minmax_element(quads.begin(), quads.end(), [&](int a, int b) {
      return centre_[static_cast<std::size_t>(a)].*axis <
             centre_[static_cast<std::size_t>(b)].*axis;
    });
    return centre_[static_cast<std::size_t>(*high)].*axis -
           centre_[static_cast<std::size_t>(*low)].*axis;
  }

  const mesh::QuadMesh& mesh_;
  std::vector<mesh::Point> centre_;
  std::vector<int> mark_;
  std::vector<char> placed_;
  std::vector<int> order_;
  int next_;
  int stamp_ = 0;
};

}  // namespace

std::vector<int> nested_dissection(const mesh::QuadMesh& mesh) {
  return Dissection(mesh).run();
}

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
