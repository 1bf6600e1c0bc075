#include "solver/job/cut.h"
#include "solver/job/fault_list.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

struct Height {
  double y;
  double x;  ///< where
};

// The lowest that the wall's top comes under a load; at a step, the load's own side counts.
Height lowest_top_under(const mesh::WallShape& wall, mesh::Interval load) {
  Height lowest{HUGE_VAL, load.from};
  for (std::size_t i = 1; i < wall.top.size(); ++i) {
    const mesh::Point from = wall.top[i - 1];
    const mesh::Point to = wall.top[i];
    const mesh::Interval common{std::max(from.x, load.from), std::min(to.x, load.to)};
    if (common.length() <= mesh::same_place) continue;
    for (const double x : {common.from, common.to}) {
      const double y = std::lerp(from.y, to.y, (x - from.x) / (to.x - from.x));
      if (y < lowest.y) lowest = {y, x};
    }
  }
  return lowest;
}

// A load on the wall: where it lies, and the keys to refuse it at.
struct Bed {
  mesh::Interval x;
  double level;
  bool follows_top;
  std::string level_key;
};

void check_bed_in_openings(const mesh::WallShape& wall, const Bed& bed, FaultList& faults) {
  for (const mesh::Opening& opening : wall.openings) {
    const mesh::Interval common{std::max(bed.x.from, opening.left),
                                std::min(bed.x.to, opening.right())};
    if (common.length() <= mesh::same_place || takes_out(wall.cut, opening)) continue;
    const double middle = opening.span().middle();
    const double head = opening.head(std::clamp(middle, common.from, common.to));
    const double top = lowest_top_under(wall, common).y;
    const bool open_top = opening.crown() >= top - mesh::same_place;
    const double level = bed.follows_top ? top : bed.level;
    const bool in_hole = level > opening.sill + mesh::same_place && level < head - mesh::same_place;
    if (in_hole || (open_top && level >= head - mesh::same_place))
      faults.push_back({bed.level_key,
                        fmt::format("{}, {} opening {}", in_words(level),
                                    in_hole ? "in" : "over the open top of", quoted(opening.name)),
                        "a load on masonry"});
  }
}

void check_bed(const mesh::WallShape& wall, const Bed& bed, FaultList& faults) {
  const Height top = lowest_top_under(wall, bed.x);
  if (!bed.follows_top && bed.level > top.y + mesh::same_place)
    faults.push_back({bed.level_key,
                      fmt::format("{}, above the wall's top, which is at {} where x is {}",
                                  in_words(bed.level), in_words(top.y), in_words(top.x)),
                      "a load on masonry"});
  else if (!bed.follows_top && bed.level < -mesh::same_place)
    faults.push_back(
        {bed.level_key, in_words(bed.level) + ", below the base at 0", "a load on masonry"});
  else if (!bed.follows_top && bed.level < wall.cut.soffit - mesh::same_place &&
           overlap(bed.x, wall.cut.span()) > mesh::same_place)
    faults.push_back({bed.level_key,
                      fmt::format("{}, in the cut, below its soffit at {}", in_words(bed.level),
                                  in_words(wall.cut.soffit)),
                      "a load on masonry"});
  else
    check_bed_in_openings(wall, bed, faults);
}

void check_line_load(const Job& job, std::size_t i, FaultList& faults) {
  const LineLoad& load = job.line_loads[i];
  const std::size_t before = faults.size();
  check_stretch(load.x, job.wall.length, fmt::format("line_load[{}]", i), faults);
  if (faults.size() == before)
    check_bed(job.wall, {load.x, load.level, load.follows_top, key_of("line_load", i, "level")},
              faults);
}

void check_point_load(const Job& job, std::size_t i, FaultList& faults) {
  const PointLoad& load = job.point_loads[i];
  const std::size_t before = faults.size();
  check_bearing(load.x, load.bearing, job.wall.length, key_of("point_load", i, "x"), faults);
  if (faults.size() == before)
    check_bed(job.wall, {load.span(), load.level, false, key_of("point_load", i, "level")}, faults);
}

}  // namespace

void check_stretch(mesh::Interval x, double wall_length, const std::string& entry,
                   FaultList& faults) {
  if (x.from < -mesh::same_place)
    faults.push_back(
        {entry + ".from", in_words(x.from) + ", past the wall's left end", "a load on the wall"});
  if (x.length() <= mesh::same_place)
    faults.push_back({entry + ".to",
                      fmt::format("{}, not right of where the load begins at {}", in_words(x.to),
                                  in_words(x.from)),
                      "an end right of the beginning"});
  if (x.to > wall_length + mesh::same_place)
    faults.push_back(
        {entry + ".to",
         fmt::format("{}, past the wall's right end at {}", in_words(x.to), in_words(wall_length)),
         "a load on the wall"});
}

void check_bearing(double x, double bearing, double wall_length, const std::string& x_key,
                   FaultList& faults) {
  const mesh::Interval span{x - 0.5 * bearing, x + 0.5 * bearing};
  if (span.from < -mesh::same_place || span.to > wall_length + mesh::same_place)
    faults.push_back({x_key,
                      fmt::format("{}, so that it bears from {}, on a wall {} long", in_words(x),
                                  in_words(span), in_words(wall_length)),
                      "a bearing on the wall"});
}

void find_load_faults(const Job& job, FaultList& faults) {
  for (std::size_t i = 0; i < job.line_loads.size(); ++i) check_line_load(job, i, faults);
  for (std::size_t i = 0; i < job.point_loads.size(); ++i) check_point_load(job, i, faults);

  const auto weighs = [](const auto& part) { return part.characteristic() > 0.0; };
  if (job.masonry.unit_weight == 0.0 && std::ranges::none_of(job.line_loads, weighs) &&
      std::ranges::none_of(job.point_loads, weighs))
    faults.push_back({"masonry.unit_weight", "0 kN/m3, and no load on the wall",
                      "a wall that weighs something or carries a load"});
}

// The soffit over a bearing inside the cut is masonry, for `find_cut_faults` lets no opening in.
void find_needle_faults(const Job& job, FaultList& faults) {
  const mesh::Cut& cut = job.wall.cut;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    const Needle& needle = job.needles[i];
    const mesh::Interval bearing = needle.bearing();
    if (bearing.from < cut.left - mesh::same_place || bearing.to > cut.right + mesh::same_place)
      faults.push_back({key_of("needle", i, "x"),
                        fmt::format("{}, so that it bears from {}, where the cut is from {}",
                                    in_words(needle.x), in_words(bearing), in_words(cut.span())),
                        "a needle under the soffit, clear of the piers"});
    for (std::size_t j = 0; j < i; ++j) {
      const mesh::Interval other = job.needles[j].bearing();
      if (overlap(bearing, other) > mesh::same_place)
        faults.push_back({key_of("needle", i, "x"),
                          fmt::format("{}, so that it bears from {}, where needle {} bears from {}",
                                      in_words(needle.x), in_words(bearing),
                                      quoted(job.needles[j].name), in_words(other)),
                          "needles clear of one another"});
    }
    if (needle.slack > 0.0 && needle.preload > 0.0)
      faults.push_back({key_of("needle", i, "preload"),
                        fmt::format("{:.6g} kN with a slack of {}", needle.preload / 1000.0,
                                    in_words(needle.slack)),
                        "a preload or a slack, not both"});
  }
}

}  // namespace deadshore::solver
