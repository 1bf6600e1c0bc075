#include "io/job/member_reader.h"
#include "io/job/table_readers.h"
#include "solver/job/fault_list.h"
#include "solver/job/house_fields.h"
#include "solver/loads/house_loads.h"
#include "solver/loads/roof_loads.h"

#include <fmt/format.h>

#include <initializer_list>
#include <map>
#include <utility>

namespace deadshore::io {

namespace {

namespace fields = solver::fields;

/// The source of what the job gives outright.
constexpr std::string_view as_given = "as given in the job file";

// Uses of the tables that a loft may have.
constexpr const char* boarded_loft = "loft with access";
constexpr const char* unboarded_loft = "loft without boards";

const WeightRow& material_of(const WrittenLayer& layer, const WeightTables& weights,
                             const JobSource& source) {
  try {
    return weights.material(layer.material);
  } catch (const UnknownMember& error) {
    source.refuse(layer.path, in_quotes(layer.material) + ", a material that no table has",
                  fmt::format("the nearest known one is {}; or give its weight too: [{}, \"0.4 "
                              "kN/m2\"]",
                              in_quotes(error.nearest()), in_quotes(layer.material)));
  }
}

solver::Layer layer_of_tables(const WrittenLayer& layer, const WeightTables& weights,
                              const JobSource& source) {
  const WeightRow& row = material_of(layer, weights, source);
  if (layer.thickness && row.unit_weight) {
    return {.material = row.name,
            .thickness = *layer.thickness,
            .weight = *row.unit_weight * *layer.thickness,
            .source = row.source};
  }
  if (layer.thickness) {
    source.refuse(layer.path, fmt::format("a thickness of {}", in_quotes(layer.material)),
                  fmt::format("its weight is by area: {} alone is due", in_quotes(row.name)));
  }
  if (!row.area_weight) {
    source.refuse(layer.path, in_quotes(layer.material) + " without a thickness",
                  fmt::format("[{}, \"22 mm\"] or the like is due", in_quotes(row.name)));
  }
  return {.material = row.name, .weight = *row.area_weight, .source = row.source};
}

solver::Layer weigh(const WrittenLayer& layer, const WeightTables& weights,
                    const JobSource& source) {
  if (layer.thickness && !(*layer.thickness > 0.0)) {
    source.refuse(layer.path, fmt::format("a thickness of {:g} mm", *layer.thickness),
                  "more than 0 is due");
  }
  if (layer.area_weight) {
    return {
        .material = layer.material, .weight = *layer.area_weight, .source = std::string(as_given)};
  }
  if (layer.unit_weight) {
    return {.material = layer.material,
            .thickness = *layer.thickness,
            .weight = *layer.unit_weight * *layer.thickness,
            .source = std::string(as_given)};
  }
  return layer_of_tables(layer, weights, source);
}

/// What every part of the house is read with.
struct Context {
  const WeightTables& weights;
  const mesh::WallShape& wall;
  JobSource& source;

  /// The layers at `key`, weighed by the tables or as given.
  [[nodiscard]] solver::BuildUp build_up(const JobTable& table, std::string_view key) const {
    solver::BuildUp build_up;
    for (const WrittenLayer& layer : table.layers(key)) {
      build_up.push_back(weigh(layer, weights, source));
    }
    return build_up;
  }

  [[nodiscard]] solver::ImposedUse use(const JobTable& table, std::string_view key,
                                       const std::string& name) const {
    const UseRow row = known_member(table, key, name,
                                    [&](const std::string& wanted) { return weights.use(wanted); });
    return {.use = row.name, .load = row.load, .source = row.source};
  }
};

/// `path` is that of the floor in faults.
solver::BuildUp read_own_weight(const JobTable& table, const std::string& path,
                                const Context& context) {
  if (table.one_of({"build_up", "dead"}) == "build_up") return context.build_up(table, "build_up");
  context.source.place(path + ".build_up", table.path_of("dead"));
  context.source.place(path + ".build_up[0].weight", table.path_of("dead"));
  return {{.material = "own weight",
           .weight = table.quantity("dead"),
           .source = std::string(as_given)}};
}

/// Says where a load of the floor's table is from.
void give_imposed(solver::Floor& floor) {
  floor.imposed.use = "as given";
  floor.imposed.source = as_given;
}

solver::Floor read_floor(const JobTable& table, const std::string& path, const Context& context) {
  solver::Floor floor = read_on_wall(table, fields::floor, context.wall);
  floor.build_up = read_own_weight(table, path, context);
  if (table.one_of({"use", "imposed"}) == "use") {
    floor.imposed = context.use(table, "use", table.text("use"));
  } else {
    give_imposed(floor);
  }
  return floor;
}

solver::Floor read_loft(const JobTable& table, const std::string& path, const Context& context) {
  solver::Floor loft = read_on_wall(table, fields::loft, context.wall);
  loft.build_up = read_own_weight(table, path, context);
  if (table.one_of({"boarded", "imposed"}) == "boarded") {
    loft.imposed =
        context.use(table, "boarded", table.flag("boarded") ? boarded_loft : unboarded_loft);
  } else {
    give_imposed(loft);
  }
  return loft;
}

void add_access(const JobTable& table, solver::Roof& roof) {
  if (table.has("access")) {
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

void add_snow(const JobTable& table, solver::Roof& roof) {
  if (table.one_of({"ground_snow", "snow", "snow_zone"}) == "snow") {
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

solver::Roof read_roof(const JobTable& table, const Context& context) {
  solver::Roof roof = read_on_wall(table, fields::roof, context.wall);
  roof.on_slope = context.build_up(table, "coverings");
  if (table.has("ceiling")) roof.on_plan = context.build_up(table, "ceiling");
  add_access(table, roof);
  add_snow(table, roof);
  roof.purlins = read_list(table, fields::purlin);
  return roof;
}

/// Refuses a key that goes with the other way a partition may run.
void refuse_other_way(const JobTable& table, std::initializer_list<std::string_view> keys) {
  for (const std::string_view key : keys) {
    if (!table.has(key)) continue;
    table.refuse(key, fmt::format("{} beside runs = {}", table.written(key), table.written("runs")),
                 "a partition that runs the other way is due, or none of this");
  }
}

solver::Partition read_partition(const JobTable& table, const Context& context) {
  solver::Partition partition = read_on_wall(table, fields::partition, context.wall);
  if (partition.run == solver::PartitionRun::along_wall) {
    refuse_other_way(table, {"place", "length", "bearing"});
    table.require("distance");
  } else {
    refuse_other_way(table, {"from", "to"});
  }
  partition.build_up = context.build_up(table, "build_up");
  return partition;
}

solver::UpperWall read_upper_wall(const JobTable& table, const Context& context) {
  solver::UpperWall wall = read_on_wall(table, fields::upper_wall, context.wall);
  wall.build_up = context.build_up(table, "build_up");
  return wall;
}

solver::Chimney read_chimney(const JobTable& table, const Context& context) {
  solver::Chimney chimney = read(table, fields::chimney);
  chimney.source = as_given;
  if (table.one_of({"material", "unit_weight"}) == "unit_weight") return chimney;
  const WeightRow row = known_member(
      table, "material", [&](const std::string& name) { return context.weights.material(name); });
  if (!row.unit_weight) {
    table.refuse("material", table.written("material") + ", whose weight is by area",
                 "a material with a weight by volume is due, or `unit_weight` in its place");
  }
  chimney.unit_weight = *row.unit_weight;
  chimney.source = row.source;
  return chimney;
}

/// Where each part of a house is written, by its name.
using Places = std::map<std::string, std::string>;

/// Every table that brings a load of its own name down from the house, in the order of the schema;
/// a roof's purlins come after it.
std::vector<JobTable> house_parts(const JobTable& top) {
  std::vector<JobTable> parts;
  for (const char* list :
       {"floor", "loft", "roof", "partition", "upper_wall", "chimney", "contents"}) {
    for (const NamedTable& entry : top.tables(list)) {
      parts.push_back(entry.table);
      if (list != std::string_view("roof")) continue;
      for (const NamedTable& purlin : entry.table.tables("purlin")) parts.push_back(purlin.table);
    }
  }
  return parts;
}

/// Refuses a name that two loads have, whether given or brought down by the house, at the later
/// one.
void refuse_shared_names(const JobTable& top, const JobSource& source) {
  Places taken;
  const auto take = [&](const JobTable& table) {
    const std::string name = table.text("name");
    const auto [earlier, is_new] = taken.emplace(name, table.path_of("name"));
    if (is_new) return;
    table.refuse("name",
                 fmt::format("{}, also the name at {} (line {})", in_quotes(name), earlier->second,
                             source.line_of(earlier->second)),
                 "due: a name of its own");
  };
  for (const NamedTable& entry : top.tables("line_load")) take(entry.table);
  for (const NamedTable& entry : top.tables("point_load")) take(entry.table);
  for (const JobTable& part : house_parts(top)) take(part);
}

/// Says where each load of the house is written, by its place among all loads of its kind.
template <class Loads>
void place_loads(const Loads& loads, const char* table, const Places& places, JobSource& source) {
  for (std::size_t i = 0; i < loads.size(); ++i) {
    if (!loads[i].from_house) continue;
    source.place(fmt::format("{}[{}]", table, i), places.at(loads[i].name));
  }
}

solver::House read_parts(const JobTable& top, const Context& context) {
  solver::House house;
  const auto next_floor = [&] { return fmt::format("floor[{}]", house.floors.size()); };
  for (const NamedTable& entry : top.tables("floor")) {
    house.floors.push_back(read_floor(entry.table, next_floor(), context));
  }
  for (const NamedTable& entry : top.tables("loft")) {
    context.source.place(next_floor(), entry.table.path());
    house.floors.push_back(read_loft(entry.table, next_floor(), context));
  }
  for (const NamedTable& entry : top.tables("roof")) {
    house.roofs.push_back(read_roof(entry.table, context));
  }
  for (const NamedTable& entry : top.tables("partition")) {
    house.partitions.push_back(read_partition(entry.table, context));
  }
  for (const NamedTable& entry : top.tables("upper_wall")) {
    house.upper_walls.push_back(read_upper_wall(entry.table, context));
  }
  for (const NamedTable& entry : top.tables("chimney")) {
    house.chimneys.push_back(read_chimney(entry.table, context));
  }
  house.contents = read_list(top, fields::contents);
  return house;
}

}  // namespace

bool has_house(const JobTable& top) {
  return !house_parts(top).empty();
}

void read_house(const JobTable& top, const WeightTables& weights, solver::Job& job,
                JobSource& source) {
  if (!(job.wall.length > 0.0)) source.refuse_first(solver::find_faults(job));  // no place to stand
  refuse_shared_names(top, source);
  job.house = read_parts(top, {weights, job.wall, source});
  solver::FaultList faults;
  solver::find_house_faults(job.house, job.wall, faults);
  source.refuse_first(faults);
  job = solver::with_house_loads(std::move(job));
  Places places;
  for (const JobTable& part : house_parts(top)) places.emplace(part.text("name"), part.path());
  place_loads(job.line_loads, "line_load", places, source);
  place_loads(job.point_loads, "point_load", places, source);
}

}  // namespace deadshore::io
