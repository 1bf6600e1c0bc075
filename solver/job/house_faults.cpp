#include "mesh/plane.h"
#include "solver/job/house_fields.h"
#include "solver/job/number_faults.h"

#include <fmt/format.h>

#include <algorithm>

namespace deadshore::solver {

namespace {

std::string purlin_path(std::size_t roof, std::size_t purlin) {
  return entry_path("roof", roof) + "." + entry_path("purlin", purlin);
}

/// The house with the wall that it stands on, and where its faults go.
struct Survey {
  const House& house;
  double wall_length;
  FaultList& faults;
};

void check_build_up(const BuildUp& build_up, const std::string& key, FaultList& faults) {
  const std::size_t before = faults.size();
  for (std::size_t i = 0; i < build_up.size(); ++i) {
    const std::string layer = entry_path(key, i);
    check_number(layer + ".thickness", build_up[i].thickness, fields::mm, fields::not_negative,
                 faults);
    check_number(layer + ".weight", build_up[i].weight, fields::kN_per_m2, fields::not_negative,
                 faults);
  }
  if (faults.size() == before && weight_of(build_up) == 0.0)
    faults.push_back({key, "nothing that weighs", "what it is made of, layer by layer"});
}

void check_openings(double openings, double face, const std::string& key, FaultList& faults) {
  if (openings > face)
    faults.push_back({key,
                      fmt::format("{}, in a wall of {}", in_words(openings, fields::m2),
                                  in_words(face, fields::m2)),
                      "openings within the wall"});
}

void check_numbers_of(const House& house, FaultList& faults) {
  check_numbers(fields::floor, house.floors, faults);
  for (std::size_t i = 0; i < house.floors.size(); ++i)
    check_build_up(house.floors[i].build_up, key_of("floor", i, "build_up"), faults);
  check_numbers(fields::roof, house.roofs, faults);
  for (std::size_t i = 0; i < house.roofs.size(); ++i) {
    const Roof& roof = house.roofs[i];
    check_build_up(roof.on_slope, key_of("roof", i, "coverings"), faults);
    if (!roof.on_plan.empty()) check_build_up(roof.on_plan, key_of("roof", i, "ceiling"), faults);
    for (std::size_t j = 0; j < roof.purlins.size(); ++j)
      check_numbers(fields::purlin, roof.purlins[j], faults, purlin_path(i, j));
  }
  check_numbers(fields::partition, house.partitions, faults);
  for (std::size_t i = 0; i < house.partitions.size(); ++i)
    check_build_up(house.partitions[i].build_up, key_of("partition", i, "build_up"), faults);
  check_numbers(fields::upper_wall, house.upper_walls, faults);
  for (std::size_t i = 0; i < house.upper_walls.size(); ++i)
    check_build_up(house.upper_walls[i].build_up, key_of("upper_wall", i, "build_up"), faults);
  check_numbers(fields::chimney, house.chimneys, faults);
  check_numbers(fields::contents, house.contents, faults);
}

void check_roof(const Survey& survey, std::size_t i) {
  const Roof& roof = survey.house.roofs[i];
  if (roof.run > 0.0 || roof.overhang > 0.0)
    check_stretch(roof.x, survey.wall_length, entry_path("roof", i), survey.faults);
  else if (roof.purlins.empty())
    survey.faults.push_back({key_of("roof", i, "run"), in_words(roof.run) + ", and no purlins",
                             "rafters or purlins that bear on the wall"});
  for (std::size_t j = 0; j < roof.purlins.size(); ++j)
    check_bearing(roof.purlins[j].x, roof.purlins[j].bearing, survey.wall_length,
                  purlin_path(i, j) + ".x", survey.faults);
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
  const std::string path = entry_path("partition", i);
  const Floor* const floor = find_floor(survey, partition.floor, path + ".on");
  if (floor == nullptr) return;
  const bool along = partition.run == PartitionRun::along_wall;
  if (along)
    check_along(survey, partition, *floor, path);
  else
    check_across(survey, partition, *floor, path);
  check_openings(partition.openings,
                 partition.height * (along ? partition.x.length() : partition.length),
                 path + ".openings", survey.faults);
}

void check_upper_wall(const Survey& survey, std::size_t i) {
  const UpperWall& wall = survey.house.upper_walls[i];
  const std::size_t before = survey.faults.size();
  check_stretch(wall.x, survey.wall_length, entry_path("upper_wall", i), survey.faults);
  if (survey.faults.size() == before)
    check_openings(wall.openings, wall.height * wall.x.length(),
                   key_of("upper_wall", i, "openings"), survey.faults);
}

void check_chimney(const Survey& survey, std::size_t i) {
  const Chimney& chimney = survey.house.chimneys[i];
  if (chimney.stack_height > 0.0)
    for (const auto& [key, size] : {std::pair{"stack_width", chimney.stack_width},
                                    std::pair{"stack_depth", chimney.stack_depth}})
      check_number(key_of("chimney", i, key), size, fields::m, fields::positive, survey.faults);
  check_bearing(chimney.x, chimney.width, survey.wall_length, key_of("chimney", i, "x"),
                survey.faults);
}

void check_contents(const Survey& survey, std::size_t i) {
  const Contents& contents = survey.house.contents[i];
  const Floor* const floor = find_floor(survey, contents.floor, key_of("contents", i, "on"));
  if (floor == nullptr) return;
  check_reach(contents.distance, *floor, key_of("contents", i, "distance"), survey.faults);
  check_beside(contents.x, *floor, key_of("contents", i, "x"), survey.faults);
  check_bearing(contents.x, contents.bearing, survey.wall_length, key_of("contents", i, "x"),
                survey.faults);
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
  check_numbers_of(house, faults);
  if (faults.size() > before) return;
  for (std::size_t i = 0; i < house.floors.size(); ++i)
    check_stretch(house.floors[i].x, wall.length, entry_path("floor", i), faults);
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
