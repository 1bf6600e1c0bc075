#include "io/job/lift_reader.h"

#include "io/tables/member_choice.h"

#include <fmt/format.h>

#include <cmath>

namespace deadshore::io {

namespace {

std::vector<LiftPieceTables> pieces_of(const JobTable& lift, std::string_view list,
                                       std::string_view inner) {
  std::vector<LiftPieceTables> pieces;
  for (const NamedTable& entry : lift.tables(list)) {
    const std::vector<NamedTable> inside = entry.table.tables(inner);
    pieces.push_back({entry.table, inside.front().table});
  }
  return pieces;
}

int read_whole(const JobTable& table, std::string_view key) {
  constexpr double most = 1000.0;
  const double number = table.number(key);
  if (number < 1.0 || number > most || number != std::floor(number))
    table.refuse(key, table.written(key), "a whole number from 1 up is due");
  return static_cast<int>(number);
}

solver::ForkTable read_capacity(const JobTable& table) {
  const std::vector<double> distances = table.quantities("distance");
  const std::vector<double> loads = table.quantities("load");
  if (loads.size() != distances.size()) {
    table.refuse("load", fmt::format("a list of {}", loads.size()),
                 fmt::format("one for each of the {} distances is due", distances.size()));
  }
  solver::ForkTable capacity{table.text("source"), {}};
  for (std::size_t i = 0; i < loads.size(); ++i) capacity.rows.push_back({distances[i], loads[i]});
  return capacity;
}

solver::Lifter read_lifter(const LiftPieceTables& tables) {
  const JobTable& table = tables.piece;
  solver::Lifter lifter{.name = table.text("name"),
                        .at = table.quantity("at"),
                        .load_distance = table.quantity("load_distance"),
                        .width = table.quantity("width"),
                        .capacity = read_capacity(tables.inner),
                        .tipping = {}};
  if (table.has("own_weight") || table.has("weight_behind") || table.has("load_beyond")) {
    lifter.tipping = {.own_weight = table.quantity("own_weight"),
                      .weight_behind = table.quantity("weight_behind"),
                      .load_beyond = table.quantity("load_beyond")};
  }
  return lifter;
}

solver::Fixing read_fixing(const JobTable& table) {
  solver::Fixing fixing;
  fixing.number = read_whole(table, "number");
  if (table.one_of("capacity, diameter") == "capacity") {
    fixing.capacity = table.quantity("capacity");
    return fixing;
  }
  fixing.diameter = table.quantity("diameter");
  fixing.tensile_strength = table.quantity("tensile_strength");
  fixing.side_thickness = table.quantity("side_thickness");
  fixing.penetration = table.quantity("penetration");
  fixing.predrilled = table.choice("predrilled") == "yes";
  return fixing;
}

solver::Stand read_stand(const LiftPieceTables& tables, const MemberTables& members) {
  const JobTable& table = tables.piece;
  return {.name = table.text("name"),
          .at = table.quantity("at"),
          .width = table.quantity("width"),
          .depth = table.quantity("depth"),
          .legs = read_whole(table, "legs"),
          .leg = {.section = {.b = table.quantity("leg_width"), .h = table.quantity("leg_depth")},
                  .strength_class = read_strength_class(table, "leg_timber", members),
                  .duration = solver::LoadDuration::permanent,
                  .service = read_service_class(table)},
          .leg_length = table.quantity("leg_length"),
          .fixing = read_fixing(tables.inner)};
}

}  // namespace

std::optional<LiftTables> find_lift_tables(const JobTable& top) {
  const std::vector<NamedTable> lifts = top.tables("lift");
  if (lifts.empty()) return std::nullopt;
  const JobTable& lift = lifts.front().table;
  return LiftTables{lift, pieces_of(lift, "lifter", "capacity"),
                    pieces_of(lift, "stand", "fixing")};
}

solver::Lifting read_lifting(const LiftTables& tables, const MemberTables& members) {
  const JobTable& table = tables.lift;
  solver::Lifting lifting;
  lifting.side =
      table.choice("side") == "inside" ? solver::PropSide::inside : solver::PropSide::outside;
  lifting.entry = table.choice("entry") == "sideways" ? solver::BeamEntry::sideways
                                                      : solver::BeamEntry::endways;
  lifting.clearance = table.quantity("clearance");
  lifting.needle_underside = table.quantity("needle_underside");
  lifting.pocket_left = table.quantity("pocket_left");
  lifting.pocket_right = table.quantity("pocket_right");
  lifting.floor_level = table.quantity("floor_level");
  lifting.room_left = table.quantity("room_left");
  lifting.room_right = table.quantity("room_right");
  lifting.dynamic_factor = table.number("dynamic_factor");
  lifting.one_at_a_time = table.choice("sections") == "one at a time";
  for (const LiftPieceTables& lifter : tables.lifters)
    lifting.lifters.push_back(read_lifter(lifter));
  for (const LiftPieceTables& stand : tables.stands)
    lifting.stands.push_back(read_stand(stand, members));
  return lifting;
}

}  // namespace deadshore::io
