#include "solver/fem/quad_finder.h"

#include "mesh/connected_parts.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numeric>

namespace deadshore::solver {

namespace {

using mesh::Interval;
using mesh::Point;

mesh::Box box_of(const mesh::QuadMesh& mesh, int quad) {
  return mesh::box_around(mesh, std::array<int, 1>{quad});
}

/// Twice the area of the triangle a, b, p: positive where p lies left of a -> b.
double left_of(Point a, Point b, Point p) {
  return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

bool holds(const mesh::QuadMesh& mesh, int quad, Point p) {
  const auto corners = mesh::corners_of(mesh, quad);
  for (std::size_t c = 0; c < 4; ++c) {
    const Point a = corners[c];
    const Point b = corners[(c + 1) % 4];
    if (left_of(a, b, p) < -1e-9 * std::hypot(b.x - a.x, b.y - a.y)) return false;
  }
  return true;
}

}  // namespace

QuadFinder::QuadFinder(const mesh::QuadMesh& mesh) : mesh_(mesh) {
  std::vector<int> all(static_cast<std::size_t>(mesh.quad_count()));
  std::iota(all.begin(), all.end(), 0);
  if (!all.empty()) {
    const mesh::Box box = mesh::box_around(mesh, all);
    corner_ = {box.x.from, box.y.from};
    bin_ = std::sqrt(box.x.length() * box.y.length() / static_cast<double>(all.size()));
    columns_ = static_cast<int>(box.x.length() / bin_) + 1;
    rows_ = static_cast<int>(box.y.length() / bin_) + 1;
  }
  std::vector<std::vector<int>> bins(static_cast<std::size_t>(columns_) *
                                     static_cast<std::size_t>(rows_));
  for (const int quad : all) {
    const mesh::Box box = box_of(mesh, quad);
    const Bins rows = rows_of(box.y);
    const Bins columns = columns_of(box.x);
    for (int row = rows.first; row <= rows.last; ++row) {
      for (int column = columns.first; column <= columns.last; ++column) {
        bins[bin_at(column, row)].push_back(quad);
      }
    }
  }
  start_.push_back(0);
  for (const std::vector<int>& bin : bins) {
    quads_.insert(quads_.end(), bin.begin(), bin.end());
    start_.push_back(static_cast<int>(quads_.size()));
  }
}

QuadFinder::Bins QuadFinder::columns_of(Interval x) const {
  const auto bin = [this](double at) {
    return std::clamp(static_cast<int>((at - corner_.x) / bin_), 0, columns_ - 1);
  };
  return {bin(x.from), bin(x.to)};
}

QuadFinder::Bins QuadFinder::rows_of(Interval y) const {
  const auto bin = [this](double at) {
    return std::clamp(static_cast<int>((at - corner_.y) / bin_), 0, rows_ - 1);
  };
  return {bin(y.from), bin(y.to)};
}

int QuadFinder::find(Point p) const {
  const std::size_t bin = bin_at(columns_of({p.x, p.x}).first, rows_of({p.y, p.y}).first);
  for (int i = start_[bin]; i < start_[bin + 1]; ++i) {
    const int quad = quads_[static_cast<std::size_t>(i)];
    if (holds(mesh_, quad, p)) return quad;
  }
  return -1;
}

std::optional<Interval> stretch_inside(const mesh::QuadMesh& mesh, int quad, Point from,
                                       Point along) {
  Interval inside{-std::numeric_limits<double>::infinity(),
                  std::numeric_limits<double>::infinity()};
  const auto corners = mesh::corners_of(mesh, quad);
  for (std::size_t c = 0; c < 4; ++c) {
    const Point a = corners[c];
    const Point b = corners[(c + 1) % 4];
    const double side = std::hypot(b.x - a.x, b.y - a.y);
    const double distance = left_of(a, b, from) / side;
    const double rate = ((b.x - a.x) * along.y - (b.y - a.y) * along.x) / side;
    if (std::abs(rate) < 1e-12) {
      if (distance < -1e-9) return std::nullopt;
    } else if (rate > 0.0) {
      inside.from = std::max(inside.from, -distance / rate);
    } else {
      inside.to = std::min(inside.to, -distance / rate);
    }
  }
  if (inside.from >= inside.to) return std::nullopt;
  return inside;
}

}  // namespace deadshore::solver
