#include "mesh/plane.h"
#include "solver/job/fault_list.h"
#include "solver/job/number_check.h"

#include <fmt/format.h>

#include <algorithm>

namespace deadshore::solver {

namespace {

using number_words::area;
using number_words::degrees;
using number_words::force;
using number_words::force_per_area;
using number_words::force_per_volume;
using number_words::length;
using number_words::plain;

/// The house with the wall that it stands on, and where its faults go.
struct Survey {
  const House& house;
  double wall_length;
  FaultList& faults;
};

void check_build_up(const BuildUp& build_up, const std::string& key, FaultList& faults) {
  const std::size_t before = faults.size();
  for (std::size_t i = 0; i < build_up.size(); ++i) {
    const NumberCheck check(faults, fmt::format("{}[{}]", key, i));
    check("thickness", build_up[i].thickness, length, Range::not_negative);
    check("weight", build_up[i].weight, force_per_area, Range::not_negative);
  }
  if (faults.size() == before && weight_of(build_up) == 0.0)
    faults.push_back({key, "nothing that weighs", "what it is made of, layer by layer"});
}

void check_ends(const mesh::Interval& x, const NumberCheck& check) {
  check("from", x.from, length, Range::any);
  check("to", x.to, length, Range::any);
}

void check_openings(double openings, double face, const std::string& key, FaultList& faults) {
  if (openings > face)
    faults.push_back({key, fmt::format("{}, in a wall of {}", area(openings), area(face)),
                      "openings within the wall"});
}

void check_floor(const Survey& survey, std::size_t i) {
  const Floor& floor = survey.house.floors[i];
  FaultList& faults = survey.faults;
  const std::size_t before = faults.size();
  const NumberCheck check = entry(faults, "floor", i);
  check("level", floor.level, length, Range::any);
  check_ends(floor.x, check);
  check("span", floor.span, length, Range::positive);
  check("share", floor.share, plain, Range::share);
  check("imposed", floor.imposed.load, force_per_area, Range::not_negative);
  check("movable_partitions", floor.movable_partitions, force_per_area, Range::not_negative);
  check_build_up(floor.build_up, key_of("floor", i, "build_up"), faults);
  if (faults.size() == before)
    check_stretch(floor.x, survey.wall_length, fmt::format("floor[{}]", i), faults);
}

void check_purlin(const Survey& survey, const Purlin& purlin, const std::string& table) {
  FaultList& faults = survey.faults;
  const std::size_t before = faults.size();
  const NumberCheck check(faults, table);
  check("x", purlin.x, length, Range::any);
  check("level", purlin.level, length, Range::any);
  check("bearing", purlin.bearing, length, Range::positive);
  check("width", purlin.width, length, Range::positive);
  check("span", purlin.span, length, Range::positive);
  check("share", purlin.share, plain, Range::share);
  if (faults.size() == before)
    check_bearing(purlin.x, purlin.bearing, survey.wall_length, table + ".x", faults);
}

void check_roof(const Survey& survey, std::size_t i) {
  const Roof& roof = survey.house.roofs[i];
  FaultList& faults = survey.faults;
  const std::size_t before = faults.size();
  const NumberCheck check = entry(faults, "roof", i);
  check("level", roof.level, length, Range::any);
  check_ends(roof.x, check);
  check("pitch", roof.pitch, degrees, Range::pitch);
  check("run", roof.run, length, Range::not_negative);
  check("share", roof.share, plain, Range::share);
  check("overhang", roof.overhang, length, Range::not_negative);
  check("access", roof.access, force_per_area, Range::not_negative);
  check("snow", roof.snow, force_per_area, Range::not_negative);
  check_build_up(roof.on_slope, key_of("roof", i, "on_slope"), faults);
  if (!roof.on_plan.empty()) check_build_up(roof.on_plan, key_of("roof", i, "on_plan"), faults);
  if (faults.size() == before) {
    if (roof.run > 0.0 || roof.overhang > 0.0)
      check_stretch(roof.x, survey.wall_length, fmt::format("roof[{}]", i), faults);
    else if (roof.purlins.empty())
      faults.push_back({key_of("roof", i, "run"), in_words(roof.run) + ", and no purlins",
                        "rafters or purlins that bear on the wall"});
  }
  for (std::size_t j = 0; j < roof.purlins.size(); ++j)
    check_purlin(survey, roof.purlins[j], fmt::format("roof[{}].purlin[{}]", i, j));
}

/// The floor that something stands on, if its joists carry it to the wall; else a fault.
const Floor* find_floor(const Survey& survey, const std::string& name, const std::string& key) {
  const auto found = std::ranges::find(survey.house.floors, name, &Floor::name);
  if (found == survey.house.floors.end()) {
    survey.faults.push_back({key, quoted(name), "the name of one of the floors"});
    return nullptr;
  }
  if (found->joists == JoistDirection::along_wall) {
    survey.faults.push_back({key, quoted(name) + ", whose joists run along the wall",
                             "a floor whose joists bear on the wall"});
    return nullptr;
  }
  return &*found;
}

/// Refuses what lies beyond the far end of the joists, at `reach` from the wall.
void check_reach(double reach, const Floor& floor, const std::string& key, FaultList& faults) {
  if (reach > floor.span + mesh::same_place)
    faults.push_back({key,
                      fmt::format("{} from the wall, past the end of the joists of {} at {}",
                                  in_words(reach), quoted(floor.name), in_words(floor.span)),
                      "a place on the floor"});
}

/// Refuses what stands beside the floor.
void check_beside(double x, const Floor& floor, const std::string& key, FaultList& faults) {
  if (x < floor.x.from - mesh::same_place || x > floor.x.to + mesh::same_place)
    faults.push_back({key,
                      fmt::format("{}, where floor {} is from {}", in_words(x), quoted(floor.name),
                                  in_words(floor.x)),
                      "a place on the floor"});
}

void check_partition_numbers(const Partition& partition, const NumberCheck& check) {
  check("distance", partition.distance, length, Range::not_negative);
  check("height", partition.height, length, Range::positive);
  check("openings", partition.openings, area, Range::not_negative);
  if (partition.run == PartitionRun::along_wall) {
    check_ends(partition.x, check);
    return;
  }
  check("place", partition.place, length, Range::any);
  check("length", partition.length, length, Range::positive);
  check("bearing", partition.bearing, length, Range::positive);
}

void check_along(const Survey& survey, const Partition& partition, const Floor& floor,
                 const std::string& table) {
  const std::size_t before = survey.faults.size();
  check_stretch(partition.x, survey.wall_length, table, survey.faults);
  if (survey.faults.size() > before) return;
  check_reach(partition.distance, floor, table + ".distance", survey.faults);
  check_beside(partition.x.from, floor, table + ".from", survey.faults);
  check_beside(partition.x.to, floor, table + ".to", survey.faults);
}

void check_across(const Survey& survey, const Partition& partition, const Floor& floor,
                  const std::string& table) {
  const std::size_t before = survey.faults.size();
  check_reach(partition.distance, floor, table + ".distance", survey.faults);
  if (survey.faults.size() == before)
    check_reach(partition.distance + partition.length, floor, table + ".length", survey.faults);
  check_beside(partition.place, floor, table + ".place", survey.faults);
  check_bearing(partition.place, partition.bearing, survey.wall_length, table + ".place",
                survey.faults);
}

void check_partition(const Survey& survey, std::size_t i) {
  const Partition& partition = survey.house.partitions[i];
  FaultList& faults = survey.faults;
  const std::size_t before = faults.size();
  const std::string table = fmt::format("partition[{}]", i);
  check_partition_numbers(partition, NumberCheck(faults, table));
  check_build_up(partition.build_up, table + ".build_up", faults);
  const Floor* const floor = find_floor(survey, partition.floor, table + ".floor");
  if (faults.size() > before) return;
  const bool along = partition.run == PartitionRun::along_wall;
  if (along)
    check_along(survey, partition, *floor, table);
  else
    check_across(survey, partition, *floor, table);
  check_openings(partition.openings,
                 partition.height * (along ? partition.x.length() : partition.length),
                 table + ".openings", faults);
}

void check_upper_wall(const Survey& survey, std::size_t i) {
  const UpperWall& wall = survey.house.upper_walls[i];
  FaultList& faults = survey.faults;
  const std::size_t before = faults.size();
  const NumberCheck check = entry(faults, "upper_wall", i);
  check("level", wall.level, length, Range::any);
  check_ends(wall.x, check);
  check("height", wall.height, length, Range::positive);
  check("openings", wall.openings, area, Range::not_negative);
  check_build_up(wall.build_up, key_of("upper_wall", i, "build_up"), faults);
  if (faults.size() == before)
    check_stretch(wall.x, survey.wall_length, fmt::format("upper_wall[{}]", i), faults);
  if (faults.size() == before)
    check_openings(wall.openings, wall.height * wall.x.length(),
                   key_of("upper_wall", i, "openings"), faults);
}

void check_chimney(const Survey& survey, std::size_t i) {
  const Chimney& chimney = survey.house.chimneys[i];
  FaultList& faults = survey.faults;
  const std::size_t before = faults.size();
  const NumberCheck check = entry(faults, "chimney", i);
  check("x", chimney.x, length, Range::any);
  check("level", chimney.level, length, Range::any);
  check("width", chimney.width, length, Range::positive);
  check("projection", chimney.projection, length, Range::positive);
  check("height", chimney.height, length, Range::positive);
  check("stack_height", chimney.stack_height, length, Range::not_negative);
  const Range stack = chimney.stack_height > 0.0 ? Range::positive : Range::not_negative;
  check("stack_width", chimney.stack_width, length, stack);
  check("stack_depth", chimney.stack_depth, length, stack);
  check("solid", chimney.solid, plain, Range::share);
  check("unit_weight", chimney.unit_weight, force_per_volume, Range::positive);
  check("share", chimney.share, plain, Range::share);
  if (faults.size() == before)
    check_bearing(chimney.x, chimney.width, survey.wall_length, key_of("chimney", i, "x"), faults);
}

void check_contents(const Survey& survey, std::size_t i) {
  const Contents& contents = survey.house.contents[i];
  FaultList& faults = survey.faults;
  const std::size_t before = faults.size();
  const NumberCheck check = entry(faults, "contents", i);
  check("x", contents.x, length, Range::any);
  check("distance", contents.distance, length, Range::not_negative);
  check("bearing", contents.bearing, length, Range::positive);
  check("weight", contents.weight, force, Range::positive);
  const Floor* const floor = find_floor(survey, contents.floor, key_of("contents", i, "floor"));
  if (faults.size() > before) return;
  check_reach(contents.distance, *floor, key_of("contents", i, "distance"), faults);
  check_beside(contents.x, *floor, key_of("contents", i, "x"), faults);
  check_bearing(contents.x, contents.bearing, survey.wall_length, key_of("contents", i, "x"),
                faults);
}

/// Every element becomes a load with its name.
void check_names(const House& house, FaultList& faults) {
  TakenNames taken;
  const auto check = [&](const auto& parts, std::string_view table) {
    for (std::size_t i = 0; i < parts.size(); ++i)
      check_name(parts[i].name, key_of(table, i, "name"), taken, faults);
  };
  check(house.floors, "floor");
  check(house.roofs, "roof");
  for (std::size_t i = 0; i < house.roofs.size(); ++i)
    check(house.roofs[i].purlins, key_of("roof", i, "purlin"));
  check(house.partitions, "partition");
  check(house.upper_walls, "upper_wall");
  check(house.chimneys, "chimney");
  check(house.contents, "contents");
}

}  // namespace

void find_house_faults(const House& house, const mesh::WallShape& wall, FaultList& faults) {
  const Survey survey{house, wall.length, faults};
  const std::size_t before = faults.size();
  for (std::size_t i = 0; i < house.floors.size(); ++i) check_floor(survey, i);
  for (std::size_t i = 0; i < house.roofs.size(); ++i) check_roof(survey, i);
  // Places on a floor mean something where the floor is sound.
  if (faults.size() == before) {
    for (std::size_t i = 0; i < house.partitions.size(); ++i) check_partition(survey, i);
    for (std::size_t i = 0; i < house.contents.size(); ++i) check_contents(survey, i);
  }
  for (std::size_t i = 0; i < house.upper_walls.size(); ++i) check_upper_wall(survey, i);
  for (std::size_t i = 0; i < house.chimneys.size(); ++i) check_chimney(survey, i);
  check_names(house, faults);
}

}  // namespace deadshore::solver
