#include "mesh/plane.h"
#include "solver/job/fault_list.h"

#include <fmt/format.h>

#include <algorithm>

namespace deadshore::solver {

namespace {

// The lowest that the wall's top comes over a stretch.
double lowest_top(const mesh::WallShape& wall, mesh::Interval x) {
  double lowest = std::min(wall.top_at(x.from), wall.top_at(x.to));
  for (const mesh::Point& point : wall.top)
    if (x.contains(point.x)) lowest = std::min(lowest, point.y);
  return lowest;
}

// What else the lintel's rectangle runs into, each once.
void check_clear(const Job& job, std::size_t i, const mesh::LintelExtent& extent,
                 FaultList& faults) {
  const mesh::WallShape& wall = job.wall;
  const auto meets = [&](mesh::Interval x, mesh::Interval y) {
    return overlap(extent.x, x) > mesh::same_place && overlap(extent.y, y) > mesh::same_place;
  };
  const auto refuse = [&](const std::string& thing) {
    faults.push_back({key_of("lintel", i, "bearing"),
                      fmt::format("{}, with which the lintel, {} long and {} deep, runs into {}",
                                  in_words(job.lintels[i].shape.bearing),
                                  in_words(extent.x.length()), in_words(extent.y.length()), thing),
                      "a lintel in masonry alone"});
  };
  for (const mesh::Opening& opening : wall.openings)
    if (meets(opening.span(), {opening.sill, opening.crown()}))
      refuse("opening " + quoted(opening.name));
  for (std::size_t j = 0; j < i; ++j) {
    const mesh::LintelShape& other = job.lintels[j].shape;
    if (!mesh::spanned_opening(other, wall)) continue;
    const mesh::LintelExtent taken = mesh::extent_of(other, wall);
    if (meets(taken.x, taken.y)) refuse("lintel " + quoted(other.name));
  }

  const mesh::Cut& cut = wall.cut;
  const bool inside_cut = extent.x.from >= cut.left - mesh::same_place &&
                          extent.x.to <= cut.right + mesh::same_place &&
                          extent.y.to <= cut.soffit + mesh::same_place;
  if (!inside_cut && meets(cut.span(), {0.0, cut.soffit})) refuse("the cut");
}

void check_lintel(const Job& job, std::size_t i, FaultList& faults) {
  const mesh::WallShape& wall = job.wall;
  const mesh::LintelShape& lintel = job.lintels[i].shape;
  const mesh::Opening* opening = mesh::spanned_opening(lintel, wall);
  if (!opening) {
    faults.push_back({key_of("lintel", i, "opening"), fmt::format("opening {}", lintel.opening + 1),
                      "one of the openings"});
    return;
  }
  if (opening->rise > 0.0)
    faults.push_back({key_of("lintel", i, "opening"), quoted(opening->name) + ", an arch",
                      "an opening with a flat head"});

  const mesh::LintelExtent extent = mesh::extent_of(lintel, wall);
  if (extent.x.from < -mesh::same_place || extent.x.to > wall.length + mesh::same_place) {
    faults.push_back(
        {key_of("lintel", i, "bearing"),
         fmt::format("{}, with which the lintel runs from {}, in a wall {} long",
                     in_words(lintel.bearing), in_words(extent.x), in_words(wall.length)),
         "a lintel inside the wall"});
    return;
  }
  const double top = lowest_top(wall, extent.x);
  if (extent.y.to > top + mesh::same_place)
    faults.push_back(
        {key_of("lintel", i, "depth"),
         fmt::format("{}, which brings the lintel up to {}, through the wall's top at {}",
                     in_words(lintel.depth), in_words(extent.y.to), in_words(top)),
         "a lintel inside the wall"});
  check_clear(job, i, extent, faults);
}

}  // namespace

void find_lintel_faults(const Job& job, FaultList& faults) {
  if (job.lintels.size() != job.wall.lintels.size()) {
    faults.push_back({"lintel",
                      fmt::format("{} lintels, and {} in the wall's shape", job.lintels.size(),
                                  job.wall.lintels.size()),
                      "the same lintels in both"});
    return;
  }
  for (std::size_t i = 0; i < job.lintels.size(); ++i) check_lintel(job, i, faults);
}

}  // namespace deadshore::solver
