#include "solver/fem/equation_map.h"

#include <algorithm>
#include <array>
#include <limits>
#include <numeric>
#include <span>

namespace deadshore::solver {

namespace {

constexpr std::size_t smallest_part = 6;  // quads; below this the order no longer matters
constexpr double least_share = 0.3;       // of the quads in the smaller part of a cut

/// Where a range of quads is cut in two: the first `size` of them along `axis` (0 x, 1 y) from the
/// rest.
struct Cut {
  std::size_t axis = 0;
  std::size_t size = 0;
  double cost = std::numeric_limits<double>::infinity();
};

/// Numbers nodes from the last position to the first: what a cut shares first, then the two parts.
///
/// The quads of a part are a range of `quads_[0]`, sorted along x, and the same range of
/// `quads_[1]`, sorted along y.
class Dissection {
 public:
  explicit Dissection(const mesh::QuadMesh& mesh)
      : mesh_(mesh),
        in_second_(static_cast<std::size_t>(mesh.quad_count()), false),
        mark_(mesh.nodes.size(), 0),
        last_seen_(mesh.nodes.size(), 0),
        placed_(mesh.nodes.size(), false),
        order_(mesh.nodes.size(), -1),
        next_(mesh.node_count() - 1) {
    std::vector<mesh::Point> centre(in_second_.size());
    for (std::size_t quad = 0; quad < centre.size(); ++quad) {
      for (const mesh::Point& corner : mesh::corners_of(mesh, static_cast<int>(quad))) {
        centre[quad].x += 0.25 * corner.x;
        centre[quad].y += 0.25 * corner.y;
      }
    }
    for (std::size_t axis = 0; axis < 2; ++axis) {
      quads_[axis].resize(centre.size());
      std::iota(quads_[axis].begin(), quads_[axis].end(), 0);
      std::ranges::sort(quads_[axis], [&](int a, int b) {
        const mesh::Point& pa = centre[static_cast<std::size_t>(a)];
        const mesh::Point& pb = centre[static_cast<std::size_t>(b)];
        const auto [along_a, across_a] = axis == 0 ? std::pair(pa.x, pa.y) : std::pair(pa.y, pa.x);
        const auto [along_b, across_b] = axis == 0 ? std::pair(pb.x, pb.y) : std::pair(pb.y, pb.x);
        return along_a != along_b ? along_a < along_b : across_a < across_b;
      });
    }
  }

  std::vector<int> run() {
    split(0, quads_[0].size());
    for (int node = 0; node < mesh_.node_count(); ++node) place(node);  // nodes of no quad
    return order_;
  }

 private:
  void place(int node) {
    if (placed_[static_cast<std::size_t>(node)]) return;
    placed_[static_cast<std::size_t>(node)] = true;
    order_[static_cast<std::size_t>(next_--)] = node;
  }

  void split(std::size_t begin, std::size_t size) {
    if (size <= smallest_part) {
      for (const int quad : part(0, begin, size)) {
        for (const int node : mesh_.nodes_of(quad)) place(node);
      }
      return;
    }
    const Cut along_x = cheapest_cut(0, begin, size);
    const Cut along_y = cheapest_cut(1, begin, size);
    const Cut cut = along_x.cost <= along_y.cost ? along_x : along_y;
    sort_into_parts(cut, begin, size);
    place_shared(cut, begin, size);
    split(begin + cut.size, size - cut.size);
    split(begin, cut.size);
  }

  /// A cut shares the nodes of quads on both sides of it; the fewer the better, and the better the
  /// more even the parts.
  Cut cheapest_cut(std::size_t axis, std::size_t begin, std::size_t size) {
    const std::span<const int> quads = part(axis, begin, size);
    change_.assign(size + 1, 0);
    ++stamp_;
    for (std::size_t k = 0; k < size; ++k) {
      for (const int node : mesh_.nodes_of(quads[k])) {
        const std::size_t n = static_cast<std::size_t>(node);
        if (placed_[n]) continue;
        if (mark_[n] == stamp_) {  // shared by the cuts between here and where it was seen last
          ++change_[last_seen_[n] + 1];
          --change_[k + 1];
        }
        mark_[n] = stamp_;
        last_seen_[n] = k;
      }
    }
    Cut best{axis, size / 2};
    int shared = 0;
    for (std::size_t k = 1; k < size; ++k) {
      shared += change_[k];
      const double smaller = static_cast<double>(std::min(k, size - k));
      if (smaller < least_share * static_cast<double>(size)) continue;
      const double cost = static_cast<double>(shared) * static_cast<double>(shared) / smaller;
      if (cost < best.cost) best = {axis, k, cost};
    }
    return best;
  }

  /// Brings the quads of the other axis' list into the two parts, each in its old order.
  void sort_into_parts(const Cut& cut, std::size_t begin, std::size_t size) {
    const std::span<const int> quads = part(cut.axis, begin, size);
    for (std::size_t k = 0; k < size; ++k) {
      in_second_[static_cast<std::size_t>(quads[k])] = k >= cut.size;
    }
    const std::span<int> others = part(1 - cut.axis, begin, size);
    std::stable_partition(others.begin(), others.end(),
                          [&](int quad) { return !in_second_[static_cast<std::size_t>(quad)]; });
  }

  void place_shared(const Cut& cut, std::size_t begin, std::size_t size) {
    ++stamp_;
    for (const int quad : part(cut.axis, begin, cut.size)) {
      for (const int node : mesh_.nodes_of(quad)) mark_[static_cast<std::size_t>(node)] = stamp_;
    }
    std::vector<int> shared;
    for (const int quad : part(cut.axis, begin + cut.size, size - cut.size)) {
      for (const int node : mesh_.nodes_of(quad)) {
        int& mark = mark_[static_cast<std::size_t>(node)];
        if (mark != stamp_ || placed_[static_cast<std::size_t>(node)]) continue;
        mark = 0;
        shared.push_back(node);
      }
    }
    const auto across = cut.axis == 0 ? &mesh::Point::y : &mesh::Point::x;
    std::ranges::sort(
        shared, {}, [&](int node) { return mesh_.nodes[static_cast<std::size_t>(node)].*across; });
    for (const int node : shared) place(node);
  }

  [[nodiscard]] std::span<int> part(std::size_t axis, std::size_t begin, std::size_t size) {
    return std::span(quads_[axis]).subspan(begin, size);
  }

  const mesh::QuadMesh& mesh_;
  std::array<std::vector<int>, 2> quads_;
  std::vector<char> in_second_;         ///< of each quad: whether the last cut put it there
  std::vector<int> mark_;               ///< of each node: the stamp of the work that saw it last
  std::vector<std::size_t> last_seen_;  ///< and which quad of the range saw it
  std::vector<char> placed_;
  std::vector<int> order_;
  std::vector<int> change_;  ///< of the nodes shared, from one cut to the next
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

Eigen::VectorXd EquationMap::spread_out(const Eigen::VectorXd& free) const {
  Eigen::VectorXd nodal = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(equation_.size()));
  for (std::size_t i = 0; i < equation_.size(); ++i) {
    if (equation_[i] >= 0) nodal(static_cast<Eigen::Index>(i)) = free(equation_[i]);
  }
  return nodal;
}

Eigen::VectorXd EquationMap::gather_free(const Eigen::VectorXd& nodal) const {
  Eigen::VectorXd free(count_);
  for (std::size_t i = 0; i < equation_.size(); ++i) {
    if (equation_[i] >= 0) free(equation_[i]) = nodal(static_cast<Eigen::Index>(i));
  }
  return free;
}

}  // namespace deadshore::solver
