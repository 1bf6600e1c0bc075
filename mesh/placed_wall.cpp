#include "mesh/placed_wall.h"

#include "mesh/error.h"
#include "mesh/wall_lines.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::mesh {
namespace {

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
  [[nodiscard]] Interval x(Interval range) const { return {x(range.from), x(range.to)}; }
  [[nodiscard]] Interval y(Interval range) const { return {y(range.from), y(range.to)}; }

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

/// What of the wall the grid holds, on the lines kept.
void place_parts(const WallParts& parts, const Placer& placer, PlacedWall& placed) {
  const WallShape& shape = parts.shape;
  for (std::size_t k = 0; k < shape.openings.size(); ++k) {
    const Opening& opening = shape.openings[k];
    if (!parts.with_cut && comes_out_whole(shape, opening)) continue;
    placed.openings.push_back(placer.opening(opening, reaches_top(shape, opening)));
    placed.openings.back().number = k;
  }
  for (const LintelShape& lintel : shape.lintels) {
    const bool comes_out = comes_out_whole(shape, lintel);
    PlacedLintel& made = placed.lintels.emplace_back(PlacedLintel{lintel.name, {}, comes_out});
    if (!parts.with_cut && comes_out) continue;
    const LintelExtent extent = extent_of(lintel, shape);
    made.extent = {placer.x(extent.x), placer.y(extent.y)};
    if (parts.with_cut && !comes_out && meets_cut(shape, lintel)) {
      placed.remarks.push_back(fmt::format(
          "Lintel \"{}\" lies partly in the cut: that part counts as masonry until it comes out.",
          lintel.name));
    }
  }
  for (const WallBlock& block : parts.blocks) {
    placed.blocks.push_back({{block.group, block.name, placer.x(block.x), placer.y(block.y)},
                             block_region(shape, block.group)});
  }
  placed.cut = {placer.x(shape.cut.left), placer.x(shape.cut.right), placer.y(shape.cut.soffit)};
  if (parts.with_cut) placed.cut_region = cut_region(shape);
}

}  // namespace

PlacedWall place_wall(const WallParts& parts, std::span<const LevelLine> levels,
                      std::span<const Interval> bearings, double size) {
  const WallShape& shape = parts.shape;
  check_shape(shape);
  refuse_misplaced_blocks(parts);
  const WallLines lines = gather_lines(parts, levels, bearings);
  const WallLines kept{keep_lines(lines.uprights, size / 10.0),
                       keep_lines(lines.levels, size / 10.0)};
  refuse_collapse({shape, parts.blocks, false}, lines, kept, size);
  if (parts.with_cut) refuse_collapse(parts, lines, kept, size);

  PlacedWall placed;
  tell_moves(lines.uprights, kept.uprights, "x", placed.remarks);
  tell_moves(lines.levels, kept.levels, "y", placed.remarks);
  const Placer placer(kept);
  placed.top = placer.top(shape.top);
  place_parts(parts, placer, placed);
  for (const LevelLine& line : levels) {
    placed.lines.push_back({line.name, placer.x(line.x), placer.y(line.level), line.follows_top});
  }
  placed.uprights = kept.uprights;
  placed.levels = kept.levels;
  return placed;
}

}  // namespace deadshore::mesh
