#include "mesh/wall_lines.h"

#include "mesh/wall_outline.h"

#include <fmt/format.h>

#include <utility>

namespace deadshore::mesh {
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
