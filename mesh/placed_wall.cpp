#include "mesh/placed_wall.h"

#include "mesh/collapse.h"
#include "mesh/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::mesh {
namespace {

bool is_cut(const Cut& cut) {
  return cut.right - cut.left > same_place && cut.soffit > same_place;
}

bool swallows(const Cut& cut, Interval x, double top) {
  return is_cut(cut) && cut.left <= x.from && x.to <= cut.right && top <= cut.soffit;
}

/// True where the opening leaves no masonry above its head.
bool reaches_top(const WallShape& shape, const Opening& opening) {
  std::vector<double> places = {opening.left, opening.span().middle(), opening.right()};
  for (const Point& p : shape.top) {
    if (opening.span().contains(p.x)) places.push_back(p.x);
  }
  return std::ranges::all_of(
      places, [&](double x) { return opening.head(x) >= shape.top_at(x) - same_place; });
}

void check_shape(const WallShape& shape) {
  const auto& top = shape.top;
  if (top.size() < 2 || top.front().x != 0.0 || top.back().x != shape.length ||
      !std::ranges::is_sorted(top, {}, &Point::x)) {
    throw GeometryError("the wall's top must run from its left end to its right end");
  }
  for (const Point& p : top) {
    if (!(p.y > 0.0)) {
      throw GeometryError(fmt::format("the wall has no height at x = {:.3f} m", p.x / 1000.0));
    }
  }
  for (const Opening& opening : shape.openings) {
    if (!(opening.width > 0.0) || !(opening.height > opening.rise) || !(opening.rise >= 0.0)) {
      throw GeometryError(fmt::format(
          "opening \"{}\" must have a width, and a height above its arch", opening.name));
    }
    if (opening.left < -same_place || opening.right() > shape.length + same_place ||
        opening.sill < -same_place || opening.sill >= shape.height()) {
      throw GeometryError(fmt::format("opening \"{}\" lies outside the wall", opening.name));
    }
  }
}

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

std::vector<FeatureLine> gather_uprights(const WallShape& shape, std::span<const LevelLine> levels,
                                         std::span<const Interval> bearings) {
  std::vector<FeatureLine> lines;
  LineList hard(LineKind::hard, {0.0, shape.length}, lines);
  hard.add(0.0, "the wall's left end");
  hard.add(shape.length, "the wall's right end");
  if (is_cut(shape.cut)) {
    hard.add(shape.cut.left, "the left side of the cut");
    hard.add(shape.cut.right, "the right side of the cut");
  }
  for (const Opening& opening : shape.openings) {
    if (swallows(shape.cut, opening.span(), opening.crown())) continue;
    hard.add(opening.left, fmt::format("the left side of opening \"{}\"", opening.name));
    hard.add(opening.right(), fmt::format("the right side of opening \"{}\"", opening.name));
  }
  for (const Point& p : shape.top) hard.add(p.x, "a corner of the wall's top");
  for (const LintelShape& lintel : shape.lintels) {
    const LintelExtent extent = extent_of(lintel, shape);
    if (swallows(shape.cut, extent.x, extent.y.to)) continue;
    hard.add(extent.x.from, fmt::format("the left end of lintel \"{}\"", lintel.name));
    hard.add(extent.x.to, fmt::format("the right end of lintel \"{}\"", lintel.name));
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

std::vector<FeatureLine> gather_levels(const WallShape& shape, std::span<const LevelLine> levels) {
  std::vector<FeatureLine> lines;
  LineList hard(LineKind::hard, {0.0, shape.height()}, lines);
  hard.add(0.0, "the base");
  hard.add(shape.cut.soffit, "the soffit of the cut");
  for (const TopStretch& stretch : split_at_steps(shape.top)) {
    hard.add(stretch.level(), "the top of the wall");
  }
  for (const Opening& opening : shape.openings) {
    if (swallows(shape.cut, opening.span(), opening.crown())) continue;
    hard.add(opening.sill, fmt::format("the sill of opening \"{}\"", opening.name));
    if (reaches_top(shape, opening)) continue;
    hard.add(opening.crown(), fmt::format("the head of opening \"{}\"", opening.name));
  }
  for (const LintelShape& lintel : shape.lintels) {
    const LintelExtent extent = extent_of(lintel, shape);
    if (swallows(shape.cut, extent.x, extent.y.to)) continue;
    hard.add(extent.y.from, fmt::format("the underside of lintel \"{}\"", lintel.name));
    hard.add(extent.y.to, fmt::format("the top of lintel \"{}\"", lintel.name));
  }

  LineList soft(LineKind::soft, {0.0, shape.height()}, lines);
  for (const LevelLine& line : levels) {
    if (!line.follows_top) soft.add(line.level, fmt::format("the level of \"{}\"", line.name));
  }
  return lines;
}

/// Says which lines were moved or are not followed. `axis` is "x" or "y".
void tell_moves(std::span<const FeatureLine> lines, std::span<const FeatureLine> kept,
                const char* axis, std::vector<std::string>& remarks) {
  for (const FeatureLine& line : lines) {
    const FeatureLine& target = kept[static_cast<std::size_t>(nearest_line(kept, line.at))];
    const double distance = std::abs(target.at - line.at);
    if (distance <= same_place) continue;
    const auto remark = [&](const char* pattern) {
      remarks.push_back(fmt::format(fmt::runtime(pattern), line.what, axis, line.at / 1000.0,
                                    distance, target.what));
    };
    if (line.kind == LineKind::hard) {
      remark("Moved {} at {} = {:.4f} m by {:.3g} mm onto {}: too close for this element size.");
    } else if (*axis == 'x') {
      remark(
          "Not followed by the mesh: {} at {} = {:.4f} m, {:.3g} mm from {}; the load itself stays "
          "in its place.");
    } else {
      remark("Put {} at {} = {:.4f} m on the nearest line, {:.3g} mm away: {}.");
    }
  }
}

/// Coordinates moved onto the lines kept.
class Placer {
 public:
  explicit Placer(const WallLines& kept) : kept_(kept) {}

  [[nodiscard]] double x(double at) const { return place(kept_.uprights, at); }
  [[nodiscard]] double y(double at) const { return place(kept_.levels, at); }

  [[nodiscard]] PlacedOpening opening(const Opening& opening, bool reaches_top) const {
    PlacedOpening placed{opening, reaches_top};
    placed.shape.left = x(opening.left);
    placed.shape.width = x(opening.right()) - placed.shape.left;
    placed.shape.sill = y(opening.sill);
    if (!reaches_top) placed.shape.height = y(opening.crown()) - placed.shape.sill;
    return placed;
  }

  [[nodiscard]] std::vector<TopStretch> top(std::span<const Point> points) const {
    std::vector<TopStretch> placed = split_at_steps(points);
    std::vector<Point> moved;
    for (TopStretch& stretch : placed) {
      const double level = stretch.level();
      const double new_level = y(level);
      for (const Point& p : stretch.points) {
        const bool highest = level - p.y <= same_place;
        moved.push_back({x(p.x), highest ? new_level : std::min(p.y, new_level)});
      }
    }
    return split_at_steps(moved);
  }

 private:
  static double place(std::span<const FeatureLine> kept, double at) {
    return kept[static_cast<std::size_t>(nearest_line(kept, at))].at;
  }

  const WallLines& kept_;
};

}  // namespace

PlacedWall place_wall(const WallShape& shape, std::span<const LevelLine> levels,
                      std::span<const Interval> bearings, double size) {
  check_shape(shape);
  const WallLines lines{gather_uprights(shape, levels, bearings), gather_levels(shape, levels)};
  const WallLines kept{keep_lines(lines.uprights, size / 10.0),
                       keep_lines(lines.levels, size / 10.0)};
  refuse_collapse(shape, lines, kept, size);

  PlacedWall placed;
  tell_moves(lines.uprights, kept.uprights, "x", placed.remarks);
  tell_moves(lines.levels, kept.levels, "y", placed.remarks);
  const Placer placer(kept);
  placed.top = placer.top(shape.top);
  for (const Opening& opening : shape.openings) {
    if (swallows(shape.cut, opening.span(), opening.crown())) continue;
    placed.openings.push_back(placer.opening(opening, reaches_top(shape, opening)));
  }
  for (const LintelShape& lintel : shape.lintels) {
    const LintelExtent extent = extent_of(lintel, shape);
    PlacedLintel& made = placed.lintels.emplace_back(PlacedLintel{lintel.name, {}});
    if (swallows(shape.cut, extent.x, extent.y.to)) continue;
    made.extent = {{placer.x(extent.x.from), placer.x(extent.x.to)},
                   {placer.y(extent.y.from), placer.y(extent.y.to)}};
  }
  placed.cut = {placer.x(shape.cut.left), placer.x(shape.cut.right), placer.y(shape.cut.soffit)};
  for (const LevelLine& line : levels) {
    placed.lines.push_back({line.name,
                            {placer.x(line.x.from), placer.x(line.x.to)},
                            placer.y(line.level),
                            line.follows_top});
  }
  placed.uprights = kept.uprights;
  placed.levels = kept.levels;
  return placed;
}

}  // namespace deadshore::mesh
