#include "mesh/height_map.h"

#include <Eigen/Sparse>
#include <Eigen/SparseCholesky>

#include <algorithm>
#include <cmath>
#include <utility>

namespace deadshore::mesh {
namespace {

constexpr int most_steps = 60;    // of Newton's method
constexpr double settled = 1e-8;  // of the greatest nominal cell height

/// Energy of a cell's upright side by the ratio `r` of its height to the nominal one, with first
/// and second derivative: least at 1 and infinite at 0, a barrier so that no cell folds.
struct RatioEnergy {
  double value = 0.0;
  double slope = 0.0;
  double curvature = 0.0;
};

RatioEnergy ratio_energy(double r) {
  return {0.5 * (r - 1.0) * (r - 1.0) + 1.0 / r + r - 2.0, r - 1.0 + 1.0 - 1.0 / (r * r),
          1.0 + 2.0 / (r * r * r)};
}

/// A grid side between two nodes. `rest` is the nominal height of an upright side and 0 for a
/// side along a level; `weight` is the width over which it stands for its cells.
struct GridSpring {
  int from = 0;
  int to = 0;
  double rest = 0.0;
  double weight = 0.0;
};

/// Calls `visit(column, row)` for each solid cell.
template <class Visit>
void for_each_cell(const WallGrid& grid, Visit visit) {
  for (int column = 0; column < grid.columns(); ++column) {
    for (int row = 0; row < grid.rows(); ++row) {
      if (grid.solid(column, row)) visit(column, row);
    }
  }
}

double step_at(const std::vector<double>& values, int k) {
  return values[static_cast<std::size_t>(k) + 1] - values[static_cast<std::size_t>(k)];
}

std::vector<GridSpring> springs_of(const WallGrid& grid) {
  std::vector<GridSpring> springs;
  for_each_cell(grid, [&](int i, int j) {
    const double width = step_at(grid.x, i);
    const double height = step_at(grid.level, j);
    for (const int row : {j, j + 1}) {
      springs.push_back({grid.node(i, row), grid.node(i + 1, row), 0.0, 0.5 * height / width});
    }
    for (const int upright : {i, i + 1}) {
      springs.push_back({grid.node(upright, j), grid.node(upright, j + 1), height, 0.5 * width});
    }
  });
  return springs;
}

/// Minimises the springs' energy over the offsets of the free nodes by Newton's method.
class OffsetRelaxation {
 public:
  OffsetRelaxation(const WallGrid& grid, const HeightPins& pins, std::vector<double> offset)
      : springs_(springs_of(grid)), offset_(std::move(offset)), number_(offset_.size(), -1) {
    for (const GridSpring& spring : springs_) {
      greatest_height_ = std::max(greatest_height_, spring.rest);
      for (const int node : {spring.from, spring.to}) number_[static_cast<std::size_t>(node)] = 0;
    }
    for (int i = 0; i <= grid.columns(); ++i) {
      for (const Pin& pin : pins.upright[static_cast<std::size_t>(i)]) {
        number_[static_cast<std::size_t>(grid.node(i, pin.row))] = -1;
      }
    }
    for (int& number : number_) {
      if (number == 0) number = free_count_++;
    }
  }

  std::vector<double> relax() {
    if (free_count_ == 0) return std::move(offset_);
    for (int step = 0; step < most_steps; ++step) {
      const Eigen::VectorXd change = newton_change(step == 0);
      const double length = change.lpNorm<Eigen::Infinity>();
      advance(change);
      if (length < settled * greatest_height_) break;
    }
    return std::move(offset_);
  }

 private:
  Eigen::VectorXd newton_change(bool first) {
    std::vector<Eigen::Triplet<double>> entries;
    entries.reserve(3 * springs_.size());
    gradient_ = Eigen::VectorXd::Zero(free_count_);
    for (const GridSpring& spring : springs_) {
      const auto [slope, stiffness] = slope_and_stiffness(spring);
      const int a = number_[static_cast<std::size_t>(spring.from)];
      const int b = number_[static_cast<std::size_t>(spring.to)];
      if (a >= 0) {
        gradient_[a] -= slope;
        entries.emplace_back(a, a, stiffness);
      }
      if (b >= 0) {
        gradient_[b] += slope;
        entries.emplace_back(b, b, stiffness);
      }
      if (a >= 0 && b >= 0) entries.emplace_back(std::max(a, b), std::min(a, b), -stiffness);
    }
    Eigen::SparseMatrix<double> tangent(free_count_, free_count_);
    tangent.setFromTriplets(entries.begin(), entries.end());
    if (first) factor_.analyzePattern(tangent);
    factor_.factorize(tangent);
    return factor_.solve(-gradient_);
  }

  [[nodiscard]] std::pair<double, double> slope_and_stiffness(const GridSpring& spring) const {
    const double stretch = stretch_of(spring, offset_);
    if (spring.rest == 0.0) return {spring.weight * stretch, spring.weight};
    const RatioEnergy energy = ratio_energy(1.0 + stretch / spring.rest);
    return {spring.weight * energy.slope, spring.weight * energy.curvature / spring.rest};
  }

  static double stretch_of(const GridSpring& spring, const std::vector<double>& offset) {
    return offset[static_cast<std::size_t>(spring.to)] -
           offset[static_cast<std::size_t>(spring.from)];
  }

  /// Infinite where a cell would fold.
  [[nodiscard]] double energy_at(const std::vector<double>& offset) const {
    double sum = 0.0;
    for (const GridSpring& spring : springs_) {
      const double stretch = stretch_of(spring, offset);
      if (spring.rest == 0.0) {
        sum += 0.5 * spring.weight * stretch * stretch;
        continue;
      }
      const double ratio = 1.0 + stretch / spring.rest;
      if (ratio <= 0.0) return HUGE_VAL;
      sum += spring.weight * spring.rest * ratio_energy(ratio).value;
    }
    return sum;
  }

  /// Goes along `change`, halved until the energy falls enough.
  void advance(const Eigen::VectorXd& change) {
    const double before = energy_at(offset_);
    const double slope = gradient_.dot(change);
    for (double part = 1.0; part > 1e-6; part *= 0.5) {
      std::vector<double> trial = offset_;
      for (std::size_t node = 0; node < trial.size(); ++node) {
        if (number_[node] >= 0) trial[node] += part * change[number_[node]];
      }
      if (energy_at(trial) <= before + 1e-4 * part * slope + 1e-12 * before) {
        offset_ = std::move(trial);
        return;
      }
    }
  }

  std::vector<GridSpring> springs_;
  std::vector<double> offset_;
  std::vector<int> number_;  // of free nodes of solid cells; -1 for all others
  int free_count_ = 0;
  double greatest_height_ = 0.0;
  Eigen::VectorXd gradient_;
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factor_;
};

/// Values given at the pins of an upright, interpolated along its rows; constant past its ends.
template <class ValueOf, class Take>
void interpolate_along(const WallGrid& grid, const std::vector<Pin>& upright, ValueOf value_of,
                       Take take) {
  for (int row = 0; row <= grid.rows(); ++row) {
    const auto above = std::ranges::lower_bound(upright, row, {}, &Pin::row);
    if (above == upright.end()) {
      take(row, value_of(upright.back()));
    } else if (above->row == row || above == upright.begin()) {
      take(row, value_of(*above));
    } else {
      const Pin& below = *(above - 1);
      const double low = grid.level[static_cast<std::size_t>(below.row)];
      const double high = grid.level[static_cast<std::size_t>(above->row)];
      const double part = (grid.level[static_cast<std::size_t>(row)] - low) / (high - low);
      take(row, std::lerp(value_of(below), value_of(*above), part));
    }
  }
}

/// A place between two neighbouring values: `part` of the way from `index` to `index + 1`.
struct Between {
  int index = 0;
  double part = 0.0;
};

std::vector<Between> places_among(const std::vector<double>& coarse,
                                  const std::vector<double>& fine) {
  std::vector<Between> places;
  int index = 0;
  for (const double value : fine) {
    while (index + 2 < static_cast<int>(coarse.size()) &&
           coarse[static_cast<std::size_t>(index) + 1] <= value) {
      ++index;
    }
    const double low = coarse[static_cast<std::size_t>(index)];
    places.push_back({index, (value - low) / step_at(coarse, index)});
  }
  return places;
}

}  // namespace

std::vector<double> relax_offsets(const WallGrid& grid, const HeightPins& pins) {
  std::vector<double> offset(static_cast<std::size_t>(grid.node_count()), 0.0);
  bool all_level = true;
  for (int i = 0; i <= grid.columns(); ++i) {
    const auto offset_of = [&](const Pin& pin) {
      return pin.y - grid.level[static_cast<std::size_t>(pin.row)];
    };
    interpolate_along(grid, pins.upright[static_cast<std::size_t>(i)], offset_of,
                      [&](int row, double value) {
                        offset[static_cast<std::size_t>(grid.node(i, row))] = value;
                        if (value != 0.0) all_level = false;
                      });
  }
  if (all_level) return offset;
  return OffsetRelaxation(grid, pins, std::move(offset)).relax();
}

std::vector<double> heights_from(const WallGrid& coarse, const std::vector<double>& offsets,
                                 const WallGrid& grid, const HeightPins& pins) {
  const std::vector<Between> columns = places_among(coarse.x, grid.x);
  const std::vector<Between> rows = places_among(coarse.level, grid.level);
  const auto coarse_offset = [&](int i, int row) {
    const Between& x = columns[static_cast<std::size_t>(i)];
    const Between& y = rows[static_cast<std::size_t>(row)];
    const auto low = static_cast<std::size_t>(coarse.node(x.index, y.index));
    const auto high = static_cast<std::size_t>(coarse.node(x.index + 1, y.index));
    return std::lerp(std::lerp(offsets[low], offsets[high], x.part),
                     std::lerp(offsets[low + 1], offsets[high + 1], x.part), y.part);
  };
  std::vector<double> heights(static_cast<std::size_t>(grid.node_count()), 0.0);
  for (int i = 0; i <= grid.columns(); ++i) {
    const auto missing = [&](const Pin& pin) {
      return pin.y - grid.level[static_cast<std::size_t>(pin.row)] - coarse_offset(i, pin.row);
    };
    interpolate_along(
        grid, pins.upright[static_cast<std::size_t>(i)], missing, [&](int row, double correction) {
          heights[static_cast<std::size_t>(grid.node(i, row))] =
              grid.level[static_cast<std::size_t>(row)] + coarse_offset(i, row) + correction;
        });
  }
  return heights;
}

}  // namespace deadshore::mesh
