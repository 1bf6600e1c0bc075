#include "solver/job/beam_places.h"
#include "solver/job/cut.h"
#include "solver/job/fault_list.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <vector>

namespace deadshore::solver {

namespace {

/// Masonry that the beam's works replace at one end: its pocket, or its padstone.
struct Block {
  std::string what;  ///< "the left pocket"
  std::string key;   ///< of what makes it as large as it is
  mesh::Box box;
};

std::vector<Block> blocks_of(const Job& job) {
  const BeamPlaces places = places_of_beam(job);
  const char* const bearing = "beam.bearing";
  const char* const length = "beam.padstone.length";
  return {{"the left pocket", bearing, places.pockets[0]},
          {"the left padstone", length, places.padstones[0]},
          {"the right pocket", bearing, places.pockets[1]},
          {"the right padstone", length, places.padstones[1]}};
}

void check_height(const Job& job, FaultList& faults) {
  const PermanentBeam& beam = *job.beam;
  const double soffit = job.wall.cut.soffit;
  const double bed = places_of_beam(job).beam.y.from;
  if (bed < least_masonry - mesh::same_place) {
    faults.push_back(
        {"beam",
         fmt::format("a beam with packing {} deep, under a soffit at {}",
                     in_words(beam.member.section.h + beam.packing.thickness), in_words(soffit)),
         "room for the beam below the soffit"});
    return;
  }
  if (bed - beam.padstone.depth < least_masonry - mesh::same_place)
    faults.push_back({"beam.padstone.depth",
                      fmt::format("{}, under a beam whose underside is at {}",
                                  in_words(beam.padstone.depth), in_words(bed)),
                      "masonry between padstone and base"});
}

void check_piers(const Job& job, FaultList& faults) {
  const double length = job.beam->padstone.length;
  const mesh::Cut& cut = job.wall.cut;
  const auto check = [&](const char* side, double pier) {
    if (pier < length - mesh::same_place)
      faults.push_back({"beam.padstone.length",
                        fmt::format("{}, where the {} pier is {} wide", in_words(length), side,
                                    in_words(std::max(pier, 0.0))),
                        "a pier as wide as the padstone at each end of the beam"});
  };
  check("left", cut.left);
  check("right", job.wall.length - cut.right);
}

/// Beam ends and padstones bear on masonry alone.
void check_clear(const Job& job, const Block& block, FaultList& faults) {
  const mesh::WallShape& wall = job.wall;
  const auto refuse = [&](const std::string& thing) {
    faults.push_back(
        {block.key,
         fmt::format("{}, {} up, which {} runs into", thing, in_words(block.box.y), block.what),
         "a bearing in masonry alone"});
  };
  const auto meets = [&](mesh::Interval x, mesh::Interval y) {
    return std::min(overlap(block.box.x, x), overlap(block.box.y, y)) >
           -least_masonry + mesh::same_place;
  };
  for (const mesh::Opening& opening : wall.openings)
    if (!takes_out(wall.cut, opening) && meets(opening.span(), {opening.sill, opening.crown()}))
      refuse("opening " + quoted(opening.name));
  for (const mesh::LintelShape& lintel : wall.lintels) {
    if (!mesh::spanned_opening(lintel, wall) || takes_out(wall, lintel)) continue;
    const mesh::LintelExtent extent = mesh::extent_of(lintel, wall);
    if (meets(extent.x, extent.y)) refuse("lintel " + quoted(lintel.name));
  }
}

/// No load may come into masonry that is taken out for the beam's ends.
void check_loads(const Job& job, const Block& block, FaultList& faults) {
  const auto check = [&](const std::string& key, double level, mesh::Interval x) {
    if (overlap(block.box.x, x) > mesh::same_place && level > block.box.y.from + mesh::same_place &&
        level < block.box.y.to - mesh::same_place)
      faults.push_back({key, fmt::format("{}, in {} of the beam", in_words(level), block.what),
                        "a load on masonry that stays"});
  };
  for (std::size_t i = 0; i < job.line_loads.size(); ++i)
    if (!job.line_loads[i].follows_top)
      check(key_of("line_load", i, "level"), job.line_loads[i].level, job.line_loads[i].x);
  for (std::size_t i = 0; i < job.point_loads.size(); ++i)
    check(key_of("point_load", i, "level"), job.point_loads[i].level, job.point_loads[i].span());
}

/// The floor of the house that something named `name` stands on; null where it stands on none.
const std::string* floor_under(const House& house, const std::string& name) {
  for (const Partition& partition : house.partitions)
    if (partition.name == name) return &partition.floor;
  for (const Contents& contents : house.contents)
    if (contents.name == name) return &contents.floor;
  return nullptr;
}

}  // namespace

void find_beam_faults(const Job& job, FaultList& faults) {
  if (!job.beam) return;
  const PermanentBeam& beam = *job.beam;
  const std::size_t before = faults.size();
  check_section_class(beam.member, "beam.section", faults);
  if (beam.padstone.length < beam.bearing - mesh::same_place)
    faults.push_back({"beam.padstone.length",
                      fmt::format("{}, under a bearing of {}", in_words(beam.padstone.length),
                                  in_words(beam.bearing)),
                      "a padstone under the whole bearing"});
  check_height(job, faults);
  check_piers(job, faults);
  if (faults.size() > before) return;
  for (const Block& block : blocks_of(job)) {
    check_clear(job, block, faults);
    check_loads(job, block, faults);
  }
}

void find_dead_shore_faults(const Job& job, FaultList& faults) {
  std::vector<double> carried(job.line_loads.size(), 0.0);  // share of each load
  for (std::size_t i = 0; i < job.dead_shores.size(); ++i) {
    const DeadShore& shore = job.dead_shores[i];
    const std::size_t place = index_of(shore.carries);
    if (place >= job.line_loads.size()) {
      faults.push_back({key_of("dead_shore", i, "carries"), fmt::format("line load {}", place + 1),
                        "one of the line loads"});
      continue;
    }
    const std::string& load = job.line_loads[place].name;
    if (const std::string* floor = floor_under(job.house, load)) {
      faults.push_back({key_of("dead_shore", i, "carries"),
                        fmt::format("{}, which stands on {}", quoted(load), quoted(*floor)),
                        "the floor, with which it goes"});
      continue;
    }
    double& share = carried[place];
    share += shore.share;
    constexpr double rounding = 1e-9;
    if (share > 1.0 + rounding)
      faults.push_back({key_of("dead_shore", i, "share"),
                        fmt::format("{:.6g}, with which the dead shores carry {:.6g} times {}",
                                    shore.share, share, quoted(load)),
                        "the whole load or less"});
  }
}

}  // namespace deadshore::solver
