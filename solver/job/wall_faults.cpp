#include "solver/job/cut.h"
#include "solver/job/fault_list.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

mesh::Interval upright(const mesh::Opening& opening) {
  return {opening.sill, opening.crown()};
}

bool is_level(const mesh::WallShape& wall) {
  return wall.top.size() == 2 && wall.top[0].y == wall.top[1].y;
}

std::string outline_key(const mesh::WallShape& wall, std::size_t point) {
  return is_level(wall) ? "wall.height" : fmt::format("wall.outline[{}]", point);
}

std::string place_in_words(mesh::Point p) {
  return fmt::format("{} along, {} up", in_words(p.x), in_words(p.y));
}

void check_outline_run(const mesh::WallShape& wall, FaultList& faults) {
  const std::vector<mesh::Point>& top = wall.top;
  const std::size_t last = top.size() - 1;
  for (std::size_t i = 1; i <= last; ++i) {
    const std::string key = outline_key(wall, i);
    if (top[i].x < top[i - 1].x) {
      faults.push_back({key, place_in_words(top[i]) + ", back towards the left end",
                        "points from the left end to the right"});
    } else if (top[i].x == top[i - 1].x && top[i].y == top[i - 1].y) {
      faults.push_back({key, place_in_words(top[i]) + ", the same as the point before",
                        "another point of the outline"});
    } else if (top[i].x == top[i - 1].x && (i == 1 || i == last || top[i - 2].x == top[i].x)) {
      faults.push_back({key, place_in_words(top[i]) + ", which stands on no width of wall",
                        "at most two points over one place, and one at each end"});
    }
  }
}

// Where the openings stop one another; counts an arch up to its crown over its whole width.
void check_openings_apart(const mesh::WallShape& wall, std::size_t i, FaultList& faults) {
  const mesh::Opening& opening = wall.openings[i];
  for (std::size_t j = 0; j < i; ++j) {
    const mesh::Opening& other = wall.openings[j];
    const double aside = overlap(opening.span(), other.span());
    const double up = overlap(upright(opening), upright(other));
    if (std::min(aside, up) <= -least_masonry + mesh::same_place) continue;
    const bool stacked = aside > 0.0 && up < aside && opening.sill > other.sill;
    faults.push_back(
        {key_of("opening", i, stacked ? "sill" : "left"),
         stacked ? fmt::format("{}, not above the head of {} at {}", in_words(opening.sill),
                               quoted(other.name), in_words(other.crown()))
                 : fmt::format("opening from {}, which meets {} from {}", in_words(opening.span()),
                               quoted(other.name), in_words(other.span())),
         "masonry between openings"});
  }
}

void check_opening_in_length(const mesh::WallShape& wall, std::size_t i, FaultList& faults) {
  const mesh::Opening& opening = wall.openings[i];
  const std::string due = "an opening inside the wall, with masonry at both sides";
  if (opening.left < least_masonry - mesh::same_place)
    faults.push_back(
        {key_of("opening", i, "left"),
         in_words(opening.left) + (opening.left < -mesh::same_place ? ", past the wall's left end"
                                                                    : ", at the wall's left end"),
         due});
  else if (opening.left >= wall.length)
    faults.push_back({key_of("opening", i, "left"),
                      fmt::format("{}, past the wall's right end at {}", in_words(opening.left),
                                  in_words(wall.length)),
                      due});
  else if (opening.right() > wall.length - least_masonry + mesh::same_place)
    faults.push_back(
        {key_of("opening", i, "width"),
         fmt::format("{}, which ends at {} and the wall at {}", in_words(opening.width),
                     in_words(opening.right()), in_words(wall.length)),
         due});
}

// An opening may be open at its top: a flat head that lies in the wall's level top all along.
void check_opening_in_height(const mesh::WallShape& wall, std::size_t i, FaultList& faults) {
  const mesh::Opening& opening = wall.openings[i];
  if (opening.sill < -mesh::same_place ||
      (opening.sill > mesh::same_place && opening.sill < least_masonry)) {
    faults.push_back({key_of("opening", i, "sill"),
                      in_words(opening.sill) + ", where the wall's base is at 0",
                      "a sill inside the wall"});
    return;
  }
  double least = HUGE_VAL;  // of the wall's height over the head
  double most = -HUGE_VAL;
  const auto look = [&](mesh::Point top) {
    const double over_head = top.y - opening.head(top.x);
    least = std::min(least, over_head);
    most = std::max(most, over_head);
  };
  const mesh::Interval span = opening.span();
  for (std::size_t k = 1; k < wall.top.size(); ++k) {
    const mesh::Point from = wall.top[k - 1];
    const mesh::Point to = wall.top[k];
    const mesh::Interval common{std::max(from.x, span.from), std::min(to.x, span.to)};
    if (common.length() <= 0.0) continue;
    // Along an arch the least gap may be anywhere: look at a hundred places.
    for (int step = 0; step <= 100; ++step) {
      const double x = common.from + 0.01 * step * common.length();
      look({x, from.y + (to.y - from.y) * (x - from.x) / (to.x - from.x)});
    }
  }
  const bool open_top =
      opening.rise == 0.0 && std::abs(least) <= mesh::same_place && most <= mesh::same_place;
  if (least < least_masonry - mesh::same_place && !open_top)
    faults.push_back(
        {key_of("opening", i, "height"),
         fmt::format("{}, which brings the head up to {}{}", in_words(opening.height),
                     in_words(opening.crown()),
                     least < -mesh::same_place ? ", through the wall's top"
                                               : " and leaves no masonry over part of it"),
         "a head inside the wall, or in its level top all along"});
}

void check_arch(const mesh::Opening& opening, std::size_t i, FaultList& faults) {
  const double most = 0.5 * opening.width;
  if (opening.rise > most + mesh::same_place)
    faults.push_back({key_of("opening", i, "rise"), in_words(opening.rise),
                      fmt::format("half the width, {}, or less", in_words(most))});
  else if (opening.rise > 0.0 && opening.rise >= opening.height)
    faults.push_back({key_of("opening", i, "rise"), in_words(opening.rise),
                      fmt::format("less than the height, {}", in_words(opening.height))});
}

}  // namespace

void find_outline_faults(const Job& job, FaultList& faults) {
  const mesh::WallShape& wall = job.wall;
  if (wall.top.size() < 2) {
    faults.push_back({"wall.outline", fmt::format("{} points", wall.top.size()),
                      "at least two points, one at each end"});
    return;
  }
  check_outline_run(wall, faults);
  if (std::abs(wall.top.front().x) > mesh::same_place)
    faults.push_back({outline_key(wall, 0), place_in_words(wall.top.front()),
                      "the first point at the wall's left end, 0 m along"});
  if (std::abs(wall.top.back().x - wall.length) > mesh::same_place)
    faults.push_back(
        {outline_key(wall, wall.top.size() - 1), place_in_words(wall.top.back()),
         fmt::format("the last point at the wall's right end, {} along", in_words(wall.length))});

  const mesh::Cut& cut = wall.cut;
  const double least_top = cut.soffit + least_masonry - mesh::same_place;
  if (wall.height() < least_top) {
    faults.push_back({"cut.soffit",
                      fmt::format("{}, where the wall's top is at {}", in_words(cut.soffit),
                                  in_words(wall.height())),
                      "a soffit below the wall's top"});
  } else {
    for (std::size_t i = 0; i < wall.top.size(); ++i)
      if (wall.top[i].y < least_top)
        faults.push_back({outline_key(wall, i),
                          fmt::format("{}, not above the cut's soffit at {}",
                                      place_in_words(wall.top[i]), in_words(cut.soffit)),
                          "a top above the soffit all along"});
  }
}

void find_opening_faults(const Job& job, FaultList& faults) {
  for (std::size_t i = 0; i < job.wall.openings.size(); ++i) {
    check_opening_in_length(job.wall, i, faults);
    check_arch(job.wall.openings[i], i, faults);
    check_opening_in_height(job.wall, i, faults);
    check_openings_apart(job.wall, i, faults);
  }
}

void find_cut_faults(const Job& job, FaultList& faults) {
  const mesh::WallShape& wall = job.wall;
  const mesh::Cut& cut = wall.cut;
  if (cut.left < -mesh::same_place)
    faults.push_back(
        {"cut.left", in_words(cut.left) + ", past the wall's left end", "a cut inside the wall"});
  if (cut.right <= cut.left)
    faults.push_back({"cut.right",
                      fmt::format("{}, not right of the cut's left jamb at {}", in_words(cut.right),
                                  in_words(cut.left)),
                      "a right jamb right of the left one"});
  if (cut.right > wall.length + mesh::same_place)
    faults.push_back({"cut.right",
                      fmt::format("{}, past the wall's right end at {}", in_words(cut.right),
                                  in_words(wall.length)),
                      "a cut inside the wall"});

  const bool no_piers = cut.left < least_masonry && cut.right > wall.length - least_masonry;
  if (no_piers && job.left_end == WallEnd::free && job.right_end == WallEnd::free)
    faults.push_back(
        {"cut.left",
         fmt::format("a cut from {}, the whole wall, with both ends free", in_words(cut.span())),
         "a pier at one side or an end that is held, to stop the wall moving sideways"});

  for (const mesh::Opening& opening : wall.openings) {
    const double aside = overlap(opening.span(), cut.span());
    if (takes_out(cut, opening) || aside <= -least_masonry + mesh::same_place ||
        opening.sill >= cut.soffit + least_masonry - mesh::same_place)
      continue;
    const std::string due = "a cut that takes an opening out whole or leaves masonry around it";
    if (aside > mesh::same_place && opening.crown() > cut.soffit + mesh::same_place)
      faults.push_back({"cut.soffit",
                        fmt::format("{}, where opening {} is from {} up", in_words(cut.soffit),
                                    quoted(opening.name), in_words(upright(opening))),
                        due});
    else if (opening.left < cut.left - mesh::same_place)
      faults.push_back({"cut.left",
                        fmt::format("{}, where opening {} is from {}", in_words(cut.left),
                                    quoted(opening.name), in_words(opening.span())),
                        due});
    else
      faults.push_back({"cut.right",
                        fmt::format("{}, where opening {} is from {}", in_words(cut.right),
                                    quoted(opening.name), in_words(opening.span())),
                        due});
  }
}

}  // namespace deadshore::solver
