#include "mesh/wall_lines.h"

#include "mesh/plane.h"
#include "mesh/wall_shape.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <iterator>
#include <utility>
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

namespace {

/// Collects lines; those outside the wall are left out.
class LineList {
 public:
  LineList(LineKind kind, Interval within, std::vector<FeatureLine>& lines)
      : kind_(kind), within_(within), lines_(lines) {}

  void add(double at, std::string what) {
    if (at < within_.from - same_place || at > within_.to + same_place) return;
    lines_.push_back({at, kind_, std::move(what)});
  }

 private:
  LineKind kind_;
  Interval within_;
  std::vector<FeatureLine>& lines_;
};

/// Calls `visit(opening)` for those that stay or for those that come out whole with the cut.
template <class Visit>
void for_each_opening(const WallShape& shape, bool coming_out, Visit visit) {
  for (const Opening& opening : shape.openings) {
    if (comes_out_whole(shape, opening) == coming_out) visit(opening);
  }
}

/// Calls `visit(lintel, extent)` likewise.
template <class Visit>
void for_each_lintel(const WallShape& shape, bool coming_out, Visit visit) {
  for (const LintelShape& lintel : shape.lintels) {
    if (comes_out_whole(shape, lintel) == coming_out) visit(lintel, extent_of(lintel, shape));
  }
}

std::vector<FeatureLine> gather_uprights(const WallParts& parts, std::span<const LevelLine> levels,
                                         std::span<const Interval> bearings) {
  const WallShape& shape = parts.shape;
  std::vector<FeatureLine> lines;
  LineList hard(LineKind::hard, {0.0, shape.length}, lines);
  const auto add_opening = [&hard](const Opening& opening) {
    hard.add(opening.left, fmt::format("the left side of opening \"{}\"", opening.name));
    hard.add(opening.right(), fmt::format("the right side of opening \"{}\"", opening.name));
  };
  const auto add_lintel = [&hard](const LintelShape& lintel, const LintelExtent& extent) {
    hard.add(extent.x.from, fmt::format("the left end of lintel \"{}\"", lintel.name));
    hard.add(extent.x.to, fmt::format("the right end of lintel \"{}\"", lintel.name));
  };
  hard.add(0.0, "the wall's left end");
  hard.add(shape.length, "the wall's right end");
  if (is_cut(shape.cut)) {
    hard.add(shape.cut.left, "the left side of the cut");
    hard.add(shape.cut.right, "the right side of the cut");
  }
  for_each_opening(shape, false, add_opening);
  for (const Point& p : shape.top) hard.add(p.x, "a corner of the wall's top");
  for_each_lintel(shape, false, add_lintel);
  for (const WallBlock& block : parts.blocks) {
    hard.add(block.x.from, fmt::format("the left side of \"{}\"", block.name));
    hard.add(block.x.to, fmt::format("the right side of \"{}\"", block.name));
  }
  if (parts.with_cut) {
    for_each_opening(shape, true, add_opening);
    for_each_lintel(shape, true, add_lintel);
  }

  LineList soft(LineKind::soft, {0.0, shape.length}, lines);
  for (const Interval& bearing : bearings) {
    soft.add(bearing.from, "the left edge of a bearing");
    soft.add(bearing.to, "the right edge of a bearing");
  }
  for (const LevelLine& line : levels) {
    soft.add(line.x.from, fmt::format("the left end of \"{}\"", line.name));
    soft.add(line.x.to, fmt::format("the right end of \"{}\"", line.name));
  }
  return lines;
}

std::vector<FeatureLine> gather_levels(const WallParts& parts, std::span<const LevelLine> levels) {
  const WallShape& shape = parts.shape;
  std::vector<FeatureLine> lines;
  LineList hard(LineKind::hard, {0.0, shape.height()}, lines);
  const auto add_opening = [&](const Opening& opening) {
    hard.add(opening.sill, fmt::format("the sill of opening \"{}\"", opening.name));
    if (reaches_top(shape, opening)) return;
    hard.add(opening.crown(), fmt::format("the head of opening \"{}\"", opening.name));
  };
  const auto add_lintel = [&hard](const LintelShape& lintel, const LintelExtent& extent) {
    hard.add(extent.y.from, fmt::format("the underside of lintel \"{}\"", lintel.name));
    hard.add(extent.y.to, fmt::format("the top of lintel \"{}\"", lintel.name));
  };
  hard.add(0.0, "the base");
  hard.add(shape.cut.soffit, "the soffit of the cut");
  for (const TopStretch& stretch : split_at_steps(shape.top)) {
    hard.add(stretch.level(), "the top of the wall");
  }
  for_each_opening(shape, false, add_opening);
  for_each_lintel(shape, false, add_lintel);
  for (const WallBlock& block : parts.blocks) {
    hard.add(block.y.from, fmt::format("the underside of \"{}\"", block.name));
    hard.add(block.y.to, fmt::format("the top of \"{}\"", block.name));
  }
  if (parts.with_cut) {
    for_each_opening(shape, true, add_opening);
    for_each_lintel(shape, true, add_lintel);
  }

  LineList soft(LineKind::soft, {0.0, shape.height()}, lines);
  for (const LevelLine& line : levels) {
    if (!line.follows_top) soft.add(line.level, fmt::format("the level of \"{}\"", line.name));
  }
  return lines;
}

}  // namespace

WallLines gather_lines(const WallParts& parts, std::span<const LevelLine> levels,
                       std::span<const Interval> bearings) {
  return {gather_uprights(parts, levels, bearings), gather_levels(parts, levels)};
}

}  // namespace deadshore::mesh
