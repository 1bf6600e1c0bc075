#include "io/job/needle_frame_reader.h"

#include "io/tables/member_choice.h"
#include "solver/members/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <initializer_list>
#include <utility>

namespace deadshore::io {

namespace {

/// Refuses dimensions that the needle's `material` does not have.
void refuse_strays(const JobTable& table, std::string_view material,
                   std::initializer_list<std::string_view> due) {
  constexpr std::array<std::string_view, 9> all = {"grade", "h",     "b",     "tw",           "tf",
                                                   "r",     "width", "depth", "service_class"};
  for (const std::string_view key : all) {
    if (!table.has(key) || std::find(due.begin(), due.end(), key) != due.end()) continue;
    table.refuse(key, table.written(key), fmt::format("{} does not have it", material));
  }
}

solver::SteelSection read_own_section(const JobTable& table) {
  using solver::SectionKind;
  const std::string kind = table.choice("kind");
  solver::SteelSection section;
  section.h = table.quantity("h");
  section.tw = table.quantity("tw");
  if (kind == "circular hollow") {
    refuse_strays(table, "a circular hollow section", {"grade", "h", "tw"});
    section.kind = SectionKind::circular_hollow;
    section.b = section.h;
    section.tf = section.tw;
  } else if (kind == "rectangular hollow") {
    refuse_strays(table, "a rectangular hollow section", {"grade", "h", "b", "tw"});
    section.kind = SectionKind::rectangular_hollow;
    section.b = table.quantity("b");
    section.tf = section.tw;
  } else {
    refuse_strays(table, "a section by its dimensions", {"grade", "h", "b", "tw", "tf", "r"});
    section.kind = kind == "I" ? SectionKind::i_section : SectionKind::channel;
    section.b = table.quantity("b");
    section.tf = table.quantity("tf");
    section.r = table.quantity("r");
  }
  section.name = fmt::format("{} {:g} x {:g} mm", kind, section.h, section.b);
  return section;
}

solver::NeedleMember read_member(const JobTable& table, const MemberTables& members) {
  const std::string material = table.one_of("section, kind, timber");
  if (material == "kind") return read_steel(table, "kind", read_own_section(table));
  if (material == "section") {
    refuse_strays(table, "a section of the tables", {"grade"});
    return read_steel_of_tables(table, members);
  }
  refuse_strays(table, "timber", {"width", "depth", "service_class"});
  return solver::TimberMember{
      .section = {.b = table.quantity("width"), .h = table.quantity("depth")},
      .strength_class = read_strength_class(table, "timber", members),
      .duration = read_duration(table),
      .service = read_service_class(table)};
}

solver::Packing read_packing(const JobTable& table) {
  solver::Packing packing;
  packing.thickness = table.quantity("packing_thickness");
  if (packing.thickness > 0.0) {
    packing.E = table.quantity("packing_E");
    packing.strength = table.quantity("packing_strength");
  }
  return packing;
}

solver::CapacityTable read_capacity(const JobTable& table) {
  const std::vector<double> extensions = table.quantities("extension");
  const std::vector<double> loads = table.quantities("load");
  if (loads.size() != extensions.size()) {
    table.refuse("load", fmt::format("a list of {}", loads.size()),
                 fmt::format("one for each of the {} extensions is due", extensions.size()));
  }
  solver::CapacityTable capacity{table.text("source"), {}};
  for (std::size_t i = 0; i < loads.size(); ++i) capacity.rows.push_back({extensions[i], loads[i]});
  return capacity;
}

solver::Prop read_prop_of_tables(const PropTables& tables, const MemberTables& members) {
  solver::Prop prop = known_member(tables.prop, "prop",
                                   [&](const std::string& name) { return members.prop(name); });
  if (!tables.capacity) return prop;
  prop.supplier_table = read_capacity(*tables.capacity);
  try {
    solver::require_sound(prop);
  } catch (const solver::MemberError& error) {
    tables.prop.refuse("capacity", error.found(), error.due());
  }
  return prop;
}

solver::SolePlate read_sole(const JobTable& table, solver::PropSide side,
                            solver::LoadDuration duration, const MemberTables& members) {
  return {.timber = {.section = {.b = table.quantity("sole_width"),
                                 .h = table.quantity("sole_thickness")},
                     .strength_class = read_strength_class(table, "sole_timber", members),
                     .duration = duration,
                     .service = side == solver::PropSide::inside ? solver::ServiceClass::two
                                                                 : solver::ServiceClass::three},
          .length = table.quantity("sole_length"),
          .prop_base = table.quantity("prop_base")};
}

solver::NeedleProp read_prop(const PropTables& tables, solver::LoadDuration duration,
                             const MemberTables& members) {
  const JobTable& table = tables.prop;
  solver::NeedleProp prop;
  prop.side =
      table.choice("side") == "inside" ? solver::PropSide::inside : solver::PropSide::outside;
  prop.action = table.choice("acts") == "up" ? solver::PropAction::up : solver::PropAction::down;
  if (table.has("mark")) {
    prop.mark = table.text("mark");
  } else {
    prop.mark = prop.side == solver::PropSide::inside ? "inner" : "outer";
  }
  prop.distance = table.quantity("distance");
  if (prop.action == solver::PropAction::down && !table.has("level")) {
    table.refuse("level", "nothing", "the level of what it is wedged against is due");
  }
  prop.level = table.quantity("level");
  prop.prop = read_prop_of_tables(tables, members);
  prop.footing.sole = read_sole(table, prop.side, duration, members);
  read_ground(table, members, prop.footing);
  return prop;
}

}  // namespace

std::vector<FrameTables> find_frame_tables(const JobTable& top) {
  std::vector<FrameTables> frames;
  for (const NamedTable& entry : top.tables("needle_frame")) {
    FrameTables frame{entry.name, entry.table, {}};
    for (const NamedTable& prop : entry.table.tables("prop")) {
      const std::vector<NamedTable> capacities = prop.table.tables("capacity");
      frame.props.push_back({prop.table, std::nullopt});
      if (!capacities.empty()) frame.props.back().capacity.emplace(capacities.front().table);
    }
    frames.push_back(std::move(frame));
  }
  return frames;
}

solver::NeedleFrame read_needle_frame(const FrameTables& tables, const MemberTables& members) {
  const JobTable& table = tables.frame;
  solver::NeedleFrame frame;
  frame.name = tables.name;
  frame.member = read_member(table, members);
  frame.overhang = table.quantity("overhang");
  frame.packing = read_packing(table);
  if (table.has("leaves")) frame.leaves = table.stretches("leaves");
  const solver::LoadDuration duration = read_duration(table);
  for (const PropTables& prop : tables.props) {
    frame.props.push_back(read_prop(prop, duration, members));
  }
  return frame;
}

}  // namespace deadshore::io
