#include "mesh/feature_lines.h"

#include "mesh/plane.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <iterator>

namespace deadshore::mesh {
namespace {

template <class Range, class Projection>
int nearest(const Range& ascending, double at, Projection place) {
  const auto above = std::ranges::lower_bound(ascending, at, {}, place);
  auto found = above;
  if (above == ascending.end()) {
    found = std::prev(above);
  } else if (above != ascending.begin()) {
    const auto below = std::prev(above);
    if (at - std::invoke(place, *below) <= std::invoke(place, *above) - at) found = below;
  }
  return static_cast<int>(found - ascending.begin());
}

/// Equal steps of at most `size` over a gap.
double steps_over(double gap, double size) {
  return std::max(1.0, std::ceil(gap / size - 1e-9));
}

}  // namespace

std::vector<FeatureLine> keep_lines(std::span<const FeatureLine> lines, double tolerance) {
  std::vector<FeatureLine> kept;
  for (const LineKind kind : {LineKind::hard, LineKind::soft}) {
    for (const FeatureLine& line : lines) {
      if (line.kind != kind) continue;
      const auto place = std::ranges::lower_bound(kept, line.at, {}, &FeatureLine::at);
      const auto near = [&](const FeatureLine& other) {
        const double gap = std::abs(other.at - line.at);
        return gap <= same_place || gap < tolerance - same_place;
      };
      if (place != kept.end() && near(*place)) continue;
      if (place != kept.begin() && near(*std::prev(place))) continue;
      kept.insert(place, line);
    }
  }
  return kept;
}

int nearest_line(std::span<const FeatureLine> lines, double at) {
  return nearest(lines, at, &FeatureLine::at);
}

int nearest_index(std::span<const double> values, double at) {
  return nearest(values, at, std::identity{});
}

double step_count(std::span<const FeatureLine> lines, double size) {
  double count = 0.0;
  for (std::size_t k = 0; k + 1 < lines.size(); ++k)
    count += steps_over(lines[k + 1].at - lines[k].at, size);
  return count;
}

std::vector<double> subdivide(std::span<const FeatureLine> lines, double size) {
  std::vector<double> places;
  for (std::size_t k = 0; k + 1 < lines.size(); ++k) {
    const double from = lines[k].at;
    const double gap = lines[k + 1].at - from;
    const double steps = steps_over(gap, size);
    for (double step = 0.0; step < steps; ++step) places.push_back(from + gap * (step / steps));
  }
  places.push_back(lines.back().at);
  return places;
}

}  // namespace deadshore::mesh
