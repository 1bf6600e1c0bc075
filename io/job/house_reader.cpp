#include "io/job/house_reader.h"

#include "io/job/build_up_reader.h"
#include "io/job/job_wording.h"
#include "io/tables/member_choice.h"
#include "solver/loads/roof_loads.h"

#include <fmt/format.h>

#include <utility>

namespace deadshore::io {

namespace {

// Uses of the tables that a loft may have.
constexpr const char* boarded_loft = "loft with access";
constexpr const char* unboarded_loft = "loft without boards";

/// What every part of the house is read with.
struct Context {
  const WeightTables& weights;
  const mesh::WallShape& wall;
  JobSource& source;

  [[nodiscard]] solver::BuildUp build_up(const JobTable& table, std::string_view key) const {
    return read_build_up(table, key, weights, source);
  }

  [[nodiscard]] solver::ImposedUse use(const JobTable& table, std::string_view key,
                                       const std::string& name) const {
    const UseRow row = known_member(table, key, name,
                                    [&](const std::string& wanted) { return weights.use(wanted); });
    return {.use = row.name, .load = row.load, .source = row.source};
  }
};

mesh::Interval read_stretch(const JobTable& table, const mesh::WallShape& wall) {
  return {table.has("from") ? table.quantity("from") : 0.0,
          table.has("to") ? table.quantity("to") : wall.length};
}

solver::ImposedUse imposed_as_given(const JobTable& table) {
  return {.use = "as given", .load = table.quantity("imposed"), .source = std::string(as_given)};
}

/// `key` is that of the floor in faults.
solver::BuildUp read_own_weight(const JobTable& table, const std::string& key,
                                const Context& context) {
  if (table.one_of("build_up, dead") == "build_up") return context.build_up(table, "build_up");
  context.source.place(key + ".build_up", table.path_of("dead"));
  context.source.place(key + ".build_up[0].weight", table.path_of("dead"));
  return {{.material = "own weight",
           .weight = table.quantity("dead"),
           .source = std::string(as_given)}};
}

/// What floors and lofts have in common.
solver::Floor read_joisted(const JobTable& table, const std::string& key, const Context& context) {
  return {.name = table.text("name"),
          .level = table.quantity("level"),
          .x = read_stretch(table, context.wall),
          .joists = table.choice("joists") == "along the wall" ? solver::JoistDirection::along_wall
                                                               : solver::JoistDirection::onto_wall,
          .span = table.quantity("span"),
          .share = table.number("share"),
          .build_up = read_own_weight(table, key, context),
          .imposed = {},
          .movable_partitions = 0.0};
}

solver::Floor read_floor(const JobTable& table, const std::string& key, const Context& context) {
  solver::Floor floor = read_joisted(table, key, context);
  floor.imposed = table.one_of("use, imposed") == "use"
                      ? context.use(table, "use", table.text("use"))
                      : imposed_as_given(table);
  floor.movable_partitions = table.quantity("movable_partitions");
  return floor;
}

solver::Floor read_loft(const JobTable& table, const std::string& key, const Context& context) {
  solver::Floor loft = read_joisted(table, key, context);
  if (table.one_of("boarded, imposed") == "imposed") {
    loft.imposed = imposed_as_given(table);
  } else {
    loft.imposed =
        context.use(table, "boarded", table.flag("boarded") ? boarded_loft : unboarded_loft);
  }
  return loft;
}

solver::Purlin read_purlin(const JobTable& table) {
  return {.name = table.text("name"),
          .x = table.quantity("x"),
          .level = table.quantity("level"),
          .bearing = table.quantity("bearing"),
          .width = table.quantity("width"),
          .span = table.quantity("span"),
          .share = table.number("share")};
}

void read_access(const JobTable& table, solver::Roof& roof) {
  if (table.has("access")) {
    roof.access = table.quantity("access");
    roof.access_source = as_given;
    return;
  }
  roof.access = solver::roof_access_load(roof.pitch);
  roof.access_source = fmt::format(
      "category H at {:.4g} degrees, UK NA to EN 1991-1-1 Table NA.7; from memory, "
      "unverified",
      roof.pitch);
}

/// Snow on the ground, and where it is from.
struct GroundSnow {
  double load = 0.0;
  std::string source;
};

GroundSnow read_ground_snow(const JobTable& table) {
  if (table.has("ground_snow")) {
    const double load = table.quantity("ground_snow");
    if (load < 0.0) table.refuse("ground_snow", table.written("ground_snow"), "0 or more is due");
    return {load, std::string(as_given)};
  }
  constexpr double last_zone = 5.0;
  const double zone = table.number("snow_zone");
  if (zone < 1.0 || zone > last_zone) {
    table.refuse("snow_zone", table.written("snow_zone"), "a zone of the map, 1 to 5, is due");
  }
  const double altitude = table.quantity("altitude");
  return {solver::ground_snow_uk(zone, altitude),
          fmt::format("zone {:g} at {:g} m by the UK NA to EN 1991-1-3; from memory, unverified",
                      zone, altitude / 1e3)};
}

void read_snow(const JobTable& table, solver::Roof& roof) {
  if (table.one_of("ground_snow, snow, snow_zone") == "snow") {
    roof.snow = table.quantity("snow");
    roof.snow_source = as_given;
    return;
  }
  const GroundSnow ground = read_ground_snow(table);
  const double shape = solver::snow_shape_coefficient(roof.pitch);
  roof.snow = shape * ground.load;
  roof.snow_source = fmt::format(
      "{:.4g} (EN 1991-1-3 Table 5.2, from memory, unverified) x {:.4g} kN/m2 on the ground, {}",
      shape, ground.load * 1e3, ground.source);
}

solver::Roof read_roof(const RoofTables& tables, const Context& context) {
  const JobTable& table = tables.roof;
  const std::optional<double> level = table.quantity_unless_top("level");
  solver::Roof roof;
  roof.name = table.text("name");
  roof.level = level.value_or(context.wall.height());
  roof.follows_top = !level.has_value();
  roof.x = read_stretch(table, context.wall);
  roof.pitch = table.quantity("pitch");
  roof.run = table.quantity("run");
  roof.share = table.number("share");
  roof.overhang = table.quantity("overhang");
  context.source.place(table.path_of("on_slope"), table.path_of("coverings"));
  context.source.place(table.path_of("on_plan"), table.path_of("ceiling"));
  roof.on_slope = context.build_up(table, "coverings");
  if (table.has("ceiling")) roof.on_plan = context.build_up(table, "ceiling");
  read_access(table, roof);
  read_snow(table, roof);
  for (const NamedTable& purlin : tables.purlins) roof.purlins.push_back(read_purlin(purlin.table));
  return roof;
}

/// Refuses a key that goes with the other way a partition may run.
void refuse_other_way(const JobTable& table, std::string_view keys) {
  for (const std::string& key : split_choices(keys)) {
    if (!table.has(key)) continue;
    table.refuse(key, fmt::format("{} beside runs = {}", table.written(key), table.written("runs")),
                 "a partition that runs the other way is due, or none of this");
  }
}

solver::Partition read_partition(const JobTable& table, const Context& context) {
  solver::Partition partition;
  partition.name = table.text("name");
  partition.floor = table.text("on");
  if (table.choice("runs") == "along the wall") {
    refuse_other_way(table, "place, length, bearing");
    partition.run = solver::PartitionRun::along_wall;
    partition.distance = table.quantity("distance");
    partition.x = read_stretch(table, context.wall);
  } else {
    refuse_other_way(table, "from, to");
    partition.run = solver::PartitionRun::across_wall;
    partition.distance = table.has("distance") ? table.quantity("distance") : 0.0;
    partition.place = table.quantity("place");
    partition.length = table.quantity("length");
    partition.bearing = table.quantity("bearing");
  }
  partition.height = table.quantity("height");
  partition.openings = table.quantity("openings");
  partition.build_up = context.build_up(table, "build_up");
  return partition;
}

solver::UpperWall read_upper_wall(const JobTable& table, const Context& context) {
  const std::optional<double> level = table.quantity_unless_top("level");
  return {.name = table.text("name"),
          .level = level.value_or(context.wall.height()),
          .follows_top = !level.has_value(),
          .x = read_stretch(table, context.wall),
          .height = table.quantity("height"),
          .openings = table.quantity("openings"),
          .build_up = context.build_up(table, "build_up")};
}

solver::Chimney read_chimney(const JobTable& table, const Context& context) {
  MasonryWeight masonry = read_masonry_weight(table, context.weights);
  return {.name = table.text("name"),
          .x = table.quantity("x"),
          .level = table.quantity("level"),
          .width = table.quantity("width"),
          .projection = table.quantity("projection"),
          .height = table.quantity("height"),
          .stack_width = table.quantity("stack_width"),
          .stack_depth = table.quantity("stack_depth"),
          .stack_height = table.quantity("stack_height"),
          .solid = table.number("solid"),
          .unit_weight = masonry.unit_weight,
          .share = table.number("share"),
          .source = std::move(masonry.source)};
}

solver::Contents read_contents(const JobTable& table) {
  return {.name = table.text("name"),
          .floor = table.text("on"),
          .x = table.quantity("x"),
          .distance = table.quantity("distance"),
          .bearing = table.quantity("bearing"),
          .weight = table.quantity("weight")};
}

}  // namespace

bool HouseTables::empty() const {
  return floors.empty() && lofts.empty() && roofs.empty() && partitions.empty() &&
         upper_walls.empty() && chimneys.empty() && contents.empty();
}

HouseTables find_house_tables(const JobTable& top) {
  HouseTables tables{.floors = top.tables("floor"),
                     .lofts = top.tables("loft"),
                     .roofs = {},
                     .partitions = top.tables("partition"),
                     .upper_walls = top.tables("upper_wall"),
                     .chimneys = top.tables("chimney"),
                     .contents = top.tables("contents")};
  for (const NamedTable& roof : top.tables("roof")) {
    tables.roofs.push_back({roof.table, roof.table.tables("purlin")});
  }
  return tables;
}

std::vector<JobTable> named_parts(const HouseTables& tables) {
  std::vector<JobTable> parts;
  const auto add = [&](const std::vector<NamedTable>& entries) {
    for (const NamedTable& entry : entries) parts.push_back(entry.table);
  };
  add(tables.floors);
  add(tables.lofts);
  for (const RoofTables& roof : tables.roofs) {
    parts.push_back(roof.roof);
    add(roof.purlins);
  }
  add(tables.partitions);
  add(tables.upper_walls);
  add(tables.chimneys);
  add(tables.contents);
  return parts;
}

solver::House read_house(const HouseTables& tables, const WeightTables& weights,
                         const mesh::WallShape& wall, JobSource& source) {
  const Context context{weights, wall, source};
  solver::House house;
  const auto next_floor = [&] { return fmt::format("floor[{}]", house.floors.size()); };
  for (const NamedTable& entry : tables.floors) {
    house.floors.push_back(read_floor(entry.table, next_floor(), context));
  }
  for (const NamedTable& entry : tables.lofts) {
    source.place(next_floor(), entry.table.path());
    house.floors.push_back(read_loft(entry.table, next_floor(), context));
  }
  for (const RoofTables& roof : tables.roofs) house.roofs.push_back(read_roof(roof, context));
  for (const NamedTable& entry : tables.partitions) {
    source.place(entry.table.path_of("floor"), entry.table.path_of("on"));
    house.partitions.push_back(read_partition(entry.table, context));
  }
  for (const NamedTable& entry : tables.upper_walls) {
    house.upper_walls.push_back(read_upper_wall(entry.table, context));
  }
  for (const NamedTable& entry : tables.chimneys) {
    house.chimneys.push_back(read_chimney(entry.table, context));
  }
  for (const NamedTable& entry : tables.contents) {
    source.place(entry.table.path_of("floor"), entry.table.path_of("on"));
    house.contents.push_back(read_contents(entry.table));
  }
  return house;
}

}  // namespace deadshore::io
