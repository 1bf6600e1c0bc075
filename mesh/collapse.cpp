#include "mesh/error.h"
#include "mesh/wall_lines.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace deadshore::mesh {
namespace {

constexpr double just_outside = 1e-3;  // mm

/// A region that is not masonry, as its maker calls it.
std::string in_words(const WallParts& parts, int region) {
  if (region < cut_region(parts.shape)) {
    return fmt::format("lintel \"{}\"",
                       parts.shape.lintels[static_cast<std::size_t>(region - 1)].name);
  }
  for (const WallBlock& block : parts.blocks) {
    if (block_region(parts.shape, block.group) == region) return fmt::format("\"{}\"", block.name);
  }
  return "\"cut\"";
}

/// The thing at `p` in a builder's words, between lines `a` and `b`.
std::string thing_at(const WallParts& parts, Point p, const FeatureLine& a, const FeatureLine& b) {
  const int material = material_at(parts, p);
  if (material == masonry) return fmt::format("the masonry between {} and {}", a.what, b.what);
  if (material > masonry) {
    return in_words(parts, material);
  }
  for (const Opening& opening : parts.shape.openings) {
    if (opening.span().contains(p.x) && opening.sill <= p.y && p.y <= opening.head(p.x)) {
      return fmt::format("opening \"{}\"", opening.name);
    }
  }
  return fmt::format("the gap between {} and {}", a.what, b.what);
}

/// Hard lines by place, one for each place.
std::vector<FeatureLine> hard_lines(std::span<const FeatureLine> lines) {
  std::vector<FeatureLine> hard;
  std::ranges::copy_if(lines, std::back_inserter(hard),
                       [](const FeatureLine& line) { return line.kind == LineKind::hard; });
  std::ranges::stable_sort(hard, {}, &FeatureLine::at);
  const auto same = [](const FeatureLine& a, const FeatureLine& b) {
    return b.at - a.at <= same_place;
  };
  hard.erase(std::unique(hard.begin(), hard.end(), same), hard.end());
  return hard;
}

/// `point(along, across)` makes a point of the wall from a place on the axis of `lines` and one on
/// the axis of `across`.
template <class MakePoint>
void refuse_along(const WallParts& parts, std::span<const FeatureLine> lines,
                  std::span<const FeatureLine> kept, std::span<const FeatureLine> across,
                  double size, MakePoint point) {
  const auto refuse_between = [&](const FeatureLine& a, const FeatureLine& b, Interval group) {
    for (std::size_t k = 0; k + 1 < across.size(); ++k) {
      const double beside = 0.5 * (across[k].at + across[k + 1].at);
      const Point middle = point(0.5 * (a.at + b.at), beside);
      const int material = material_at(parts, middle);
      if (material == material_at(parts, point(group.from - just_outside, beside)) ||
          material == material_at(parts, point(group.to + just_outside, beside)) ||
          (parts.with_cut && material == cut_region(parts.shape))) {
        continue;
      }
      const double gap = b.at - a.at;
      throw GeometryError(
          fmt::format("{} is only {:.3g} mm across: too little for elements of {:g} mm; elements "
                      "of {:.3g} mm or less would fit",
                      thing_at(parts, middle, a, b), gap, size,
                      gap < 1.0 ? 10.0 * gap : std::floor(10.0 * gap)));
    }
  };
  for (std::size_t first = 0; first < lines.size();) {
    const int target = nearest_line(kept, lines[first].at);
    std::size_t last = first;
    while (last + 1 < lines.size() && nearest_line(kept, lines[last + 1].at) == target) ++last;
    for (std::size_t k = first; k < last; ++k) {
      refuse_between(lines[k], lines[k + 1], {lines[first].at, lines[last].at});
    }
    first = last + 1;
  }
}

}  // namespace

void refuse_collapse(const WallParts& parts, const WallLines& lines, const WallLines& kept,
                     double size) {
  const std::vector<FeatureLine> uprights = hard_lines(lines.uprights);
  const std::vector<FeatureLine> levels = hard_lines(lines.levels);
  refuse_along(parts, uprights, kept.uprights, levels, size, [](double x, double y) {
    return Point{x, y};
  });
  refuse_along(parts, levels, kept.levels, uprights, size, [](double y, double x) {
    return Point{x, y};
  });
}

}  // namespace deadshore::mesh
