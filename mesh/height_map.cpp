#include "mesh/height_map.h"

#include <Eigen/Sparse>
#include <Eigen/SparseCholesky>

#include <algorithm>
#include <cmath>
#include <utility>

namespace deadshore::mesh {
namespace {

constexpr double least_share = 0.25;  // of the interpolated height of a cell's upright side
constexpr double stiffest = 64.0;

/// Offsets interpolated along each upright between its pins; they follow the last pin above it.
std::vector<double> interpolated_offsets(const WallGrid& grid, const HeightPins& pins) {
  std::vector<double> offset(static_cast<std::size_t>(grid.node_count()), 0.0);
  for (int i = 0; i <= grid.columns(); ++i) {
    const std::vector<Pin>& upright = pins.upright[static_cast<std::size_t>(i)];
    const auto offset_of = [&grid](const Pin& pin) {
      return pin.y - grid.level[static_cast<std::size_t>(pin.row)];
    };
    for (int row = 0; row <= grid.rows(); ++row) {
      const auto above = std::ranges::lower_bound(upright, row, {}, &Pin::row);
      double& value = offset[static_cast<std::size_t>(grid.node(i, row))];
      if (above == upright.end()) {
        value = offset_of(upright.back());
      } else if (above->row == row || above == upright.begin()) {
        value = offset_of(*above);
      } else {
        const Pin& below = *(above - 1);
        const double low = grid.level[static_cast<std::size_t>(below.row)];
        const double high = grid.level[static_cast<std::size_t>(above->row)];
        const double part = (grid.level[static_cast<std::size_t>(row)] - low) / (high - low);
        value = std::lerp(offset_of(below), offset_of(*above), part);
      }
    }
  }
  return offset;
}

/// Calls `visit(column, row)` for each solid cell.
template <class Visit>
void for_each_cell(const WallGrid& grid, Visit visit) {
  for (int column = 0; column < grid.columns(); ++column) {
    for (int row = 0; row < grid.rows(); ++row) {
      if (grid.solid(column, row)) visit(column, row);
    }
  }
}

/// The free nodes of solid cells, numbered from 0; -1 for all others.
struct FreeNodes {
  std::vector<int> number;
  int count = 0;
};

FreeNodes number_free_nodes(const WallGrid& grid, const HeightPins& pins) {
  FreeNodes free{std::vector<int>(static_cast<std::size_t>(grid.node_count()), -1), 0};
  for_each_cell(grid, [&](int column, int row) {
    for (const int node : {grid.node(column, row), grid.node(column, row + 1),
                           grid.node(column + 1, row), grid.node(column + 1, row + 1)}) {
      free.number[static_cast<std::size_t>(node)] = 0;
    }
  });
  for (int i = 0; i <= grid.columns(); ++i) {
    for (const Pin& pin : pins.upright[static_cast<std::size_t>(i)]) {
      free.number[static_cast<std::size_t>(grid.node(i, pin.row))] = -1;
    }
  }
  for (int& number : free.number) {
    if (number == 0) number = free.count++;
  }
  return free;
}

/// Offsets that are harmonic between the pins, conducted along uprights `upright_conductivity`
/// times as well as along levels. `offset` holds the pinned values and is kept where not free.
std::vector<double> harmonic_offsets(const WallGrid& grid, const FreeNodes& free,
                                     std::vector<double> offset, double upright_conductivity) {
  std::vector<Eigen::Triplet<double>> entries;
  entries.reserve(16 * static_cast<std::size_t>(free.count));
  Eigen::VectorXd source = Eigen::VectorXd::Zero(free.count);
  const auto join = [&](int a, int b, double conductance) {
    for (const auto& [from, to] : {std::pair(a, b), std::pair(b, a)}) {
      const int row = free.number[static_cast<std::size_t>(from)];
      const int column = free.number[static_cast<std::size_t>(to)];
      if (row < 0) continue;
      entries.emplace_back(row, row, conductance);
      if (column < 0) {
        source[row] += conductance * offset[static_cast<std::size_t>(to)];
      } else if (column < row) {
        entries.emplace_back(row, column, -conductance);
      }
    }
  };
  for_each_cell(grid, [&](int i, int j) {
    const double width =
        grid.x[static_cast<std::size_t>(i) + 1] - grid.x[static_cast<std::size_t>(i)];
    const double height =
        grid.level[static_cast<std::size_t>(j) + 1] - grid.level[static_cast<std::size_t>(j)];
    const double along_level = 0.5 * height / width;
    const double along_upright = 0.5 * upright_conductivity * width / height;
    join(grid.node(i, j), grid.node(i + 1, j), along_level);
    join(grid.node(i, j + 1), grid.node(i + 1, j + 1), along_level);
    join(grid.node(i, j), grid.node(i, j + 1), along_upright);
    join(grid.node(i + 1, j), grid.node(i + 1, j + 1), along_upright);
  });

  Eigen::SparseMatrix<double> laplacian(free.count, free.count);
  laplacian.setFromTriplets(entries.begin(), entries.end());
  const Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factor(laplacian);
  const Eigen::VectorXd solution = factor.solve(source);
  for (std::size_t node = 0; node < offset.size(); ++node) {
    if (free.number[node] >= 0) offset[node] = solution[free.number[node]];
  }
  return offset;
}

/// True if no upright side of a solid cell is flattened below its least share.
bool upright_sides_stand(const WallGrid& grid, const std::vector<double>& offset,
                         const std::vector<double>& interpolated) {
  bool stand = true;
  for_each_cell(grid, [&](int column, int row) {
    const double nominal =
        grid.level[static_cast<std::size_t>(row) + 1] - grid.level[static_cast<std::size_t>(row)];
    for (const int i : {column, column + 1}) {
      const auto low = static_cast<std::size_t>(grid.node(i, row));
      const double height = nominal + offset[low + 1] - offset[low];
      const double plain = nominal + interpolated[low + 1] - interpolated[low];
      if (!(height >= least_share * plain)) stand = false;
    }
  });
  return stand;
}

}  // namespace

std::vector<double> map_heights(const WallGrid& grid, const HeightPins& pins) {
  const std::vector<double> interpolated = interpolated_offsets(grid, pins);
  std::vector<double> offset = interpolated;
  const bool all_level =
      std::ranges::all_of(interpolated, [](double value) { return value == 0.0; });
  if (!all_level) {
    const FreeNodes free = number_free_nodes(grid, pins);
    for (double stiffness = 2.0; stiffness <= stiffest; stiffness *= 2.0) {
      std::vector<double> harmonic =
          harmonic_offsets(grid, free, interpolated, stiffness * stiffness);
      if (!upright_sides_stand(grid, harmonic, interpolated)) continue;
      offset = std::move(harmonic);
      break;
    }
  }
  for (int i = 0; i <= grid.columns(); ++i) {
    for (int row = 0; row <= grid.rows(); ++row) {
      offset[static_cast<std::size_t>(grid.node(i, row))] +=
          grid.level[static_cast<std::size_t>(row)];
    }
  }
  return offset;
}

}  // namespace deadshore::mesh
