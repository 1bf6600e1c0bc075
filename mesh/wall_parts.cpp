#include "mesh/wall_parts.h"

#include "mesh/error.h"
#include "mesh/wall_shape.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

namespace deadshore::mesh {
namespace {

bool overlap(Interval a, Interval b) {
  return std::min(a.to, b.to) - std::max(a.from, b.from) > same_place;
}

bool lies_in(const Cut& cut, Interval x, double top) {
  return is_cut(cut) && cut.left <= x.from && x.to <= cut.right && top <= cut.soffit;
}

/// Extent of the cut; it has no lower end, so that nothing slips under it.
LintelExtent extent_of(const Cut& cut) {
  return {cut.span(), {std::numeric_limits<double>::lowest(), cut.soffit}};
}

bool inside_outline(const WallShape& shape, const WallBlock& block) {
  if (block.x.from < -same_place || block.x.to > shape.length + same_place ||
      block.y.from < -same_place) {
    return false;
  }
  return std::ranges::all_of(split_at_steps(shape.top), [&](const TopStretch& stretch) {
    if (!overlap(stretch.x(), block.x)) return true;
    const auto below = [&](double x) { return block.y.to <= stretch.y_at(x) + same_place; };
    return below(std::max(block.x.from, stretch.x().from)) &&
           below(std::min(block.x.to, stretch.x().to)) &&
           std::ranges::all_of(stretch.points, [&](const Point& p) {
             return !block.x.contains(p.x) || below(p.x);
           });
  });
}

/// What a block lies in or on that is not masonry outside the cut, in words; empty if nothing.
/// The rectangle around an arched opening counts as open: rows of the grid bend over it.
std::string obstacle_to(const WallParts& parts, std::size_t number) {
  const WallShape& shape = parts.shape;
  const WallBlock& block = parts.blocks[number];
  const auto meets = [&block](Interval x, Interval y) {
    return overlap(block.x, x) && overlap(block.y, y);
  };
  if (!inside_outline(shape, block)) return "reaches outside the wall";
  const auto [cut_x, cut_y] = extent_of(shape.cut);
  if (is_cut(shape.cut) && meets(cut_x, cut_y)) return "reaches into the cut";
  for (const Opening& opening : shape.openings) {
    if (meets(opening.span(), {opening.sill, opening.crown()})) {
      return fmt::format("reaches into opening \"{}\"", opening.name);
    }
  }
  for (const LintelShape& lintel : shape.lintels) {
    const LintelExtent extent = extent_of(lintel, shape);
    if (meets(extent.x, extent.y)) return fmt::format("meets lintel \"{}\"", lintel.name);
  }
  for (const WallBlock& other : parts.blocks.first(number)) {
    if (meets(other.x, other.y)) return fmt::format("overlaps \"{}\"", other.name);
  }
  return {};
}

}  // namespace

int cut_region(const WallShape& shape) {
  return static_cast<int>(shape.lintels.size()) + 1;
}

int block_region(const WallShape& shape, std::size_t group) {
  return cut_region(shape) + 1 + static_cast<int>(group);
}

std::vector<Region> regions_of(const WallParts& parts) {
  std::vector<Region> regions = {{RegionKind::masonry}};
  for (std::size_t k = 0; k < parts.shape.lintels.size(); ++k) {
    regions.push_back({RegionKind::lintel, k});
  }
  if (!parts.with_cut) return regions;
  regions.push_back({RegionKind::cut});
  std::size_t groups = 0;
  for (const WallBlock& block : parts.blocks) groups = std::max(groups, block.group + 1);
  for (std::size_t group = 0; group < groups; ++group) {
    regions.push_back({RegionKind::block, group});
  }
  return regions;
}

int material_at(const WallParts& parts, Point p) {
  const WallShape& shape = parts.shape;
  if (!was_solid(shape, p)) return nothing;
  const bool in_cut = !is_solid(shape, p);
  if (in_cut && !parts.with_cut) return nothing;
  for (std::size_t k = 0; k < shape.lintels.size(); ++k) {
    const LintelExtent extent = extent_of(shape.lintels[k], shape);
    if (!extent.x.contains(p.x) || !extent.y.contains(p.y)) continue;
    if (!in_cut || comes_out_whole(shape, shape.lintels[k])) return static_cast<int>(k) + 1;
  }
  if (in_cut) return cut_region(shape);
  for (const WallBlock& block : parts.blocks) {
    if (block.x.contains(p.x) && block.y.contains(p.y)) return block_region(shape, block.group);
  }
  return masonry;
}

bool is_cut(const Cut& cut) {
  return cut.right - cut.left > same_place && cut.soffit > same_place;
}

bool comes_out_whole(const WallShape& shape, const Opening& opening) {
  return lies_in(shape.cut, opening.span(), opening.crown());
}

bool comes_out_whole(const WallShape& shape, const LintelShape& lintel) {
  const LintelExtent extent = extent_of(lintel, shape);
  return lies_in(shape.cut, extent.x, extent.y.to);
}

bool meets_cut(const WallShape& shape, const LintelShape& lintel) {
  const LintelExtent extent = extent_of(lintel, shape);
  const auto [x, y] = extent_of(shape.cut);
  return is_cut(shape.cut) && overlap(extent.x, x) && overlap(extent.y, y);
}

bool reaches_top(const WallShape& shape, const Opening& opening) {
  std::vector<double> places = {opening.left, opening.span().middle(), opening.right()};
  for (const Point& p : shape.top) {
    if (opening.span().contains(p.x)) places.push_back(p.x);
  }
  return std::ranges::all_of(
      places, [&](double x) { return opening.head(x) >= shape.top_at(x) - same_place; });
}

void refuse_misplaced_blocks(const WallParts& parts) {
  for (std::size_t k = 0; k < parts.blocks.size(); ++k) {
    const auto& [group, name, x, y] = parts.blocks[k];
    if (!(x.length() > same_place) || !(y.length() > same_place)) {
      throw GeometryError(
          fmt::format("\"{}\" at x = {:.3f} m, y = {:.3f} m must have a width and a height", name,
                      x.from / 1000.0, y.from / 1000.0));
    }
    const std::string obstacle = obstacle_to(parts, k);
    if (obstacle.empty()) continue;
    throw GeometryError(fmt::format(
        "\"{}\" from x = {:.3f} to {:.3f} m, y = {:.3f} to {:.3f} m {}; it must lie in masonry",
        name, x.from / 1000.0, x.to / 1000.0, y.from / 1000.0, y.to / 1000.0, obstacle));
  }
}

}  // namespace deadshore::mesh
