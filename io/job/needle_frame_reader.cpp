#include "io/job/member_reader.h"
#include "io/job/table_readers.h"
#include "solver/job/needle_frame_fields.h"
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
  solver::SteelSection section;
  section.kind = table.choice<SectionKind>("kind");
  section.h = table.quantity("h");
  section.tw = table.quantity("tw");
  if (section.kind == SectionKind::circular_hollow) {
    refuse_strays(table, "a circular hollow section", {"grade", "h", "tw"});
    section.b = section.h;
    section.tf = section.tw;
  } else if (section.kind == SectionKind::rectangular_hollow) {
    refuse_strays(table, "a rectangular hollow section", {"grade", "h", "b", "tw"});
    section.b = table.quantity("b");
    section.tf = section.tw;
  } else {
    refuse_strays(table, "a section by its dimensions", {"grade", "h", "b", "tw", "tf", "r"});
    section.b = table.quantity("b");
    section.tf = table.quantity("tf");
    section.r = table.quantity("r");
  }
  section.name = fmt::format("{} {:g} x {:g} mm", table.text("kind"), section.h, section.b);
  return section;
}

/// Timber without its section, which is among the frame's own keys.
solver::NeedleMember read_member(const JobTable& table, const MemberTables& members) {
  const std::string_view material = table.one_of({"section", "kind", "timber"});
  if (material == "kind") return read_steel(table, "kind", read_own_section(table));
  if (material == "section") {
    refuse_strays(table, "a section of the tables", {"grade"});
    return read_steel_of_tables(table, members);
  }
  refuse_strays(table, "timber", {"width", "depth", "service_class"});
  return read_timber(table, "timber", members);
}

solver::Prop read_prop_with_capacity(const JobTable& table, const MemberTables& members) {
  solver::Prop prop = read_prop(table, members);
  const std::optional<JobTable> capacity = table.table("capacity");
  if (!capacity) return prop;
  prop.supplier_table = read_capacity(*capacity, solver::fields::prop_capacity, "extension");
  try {
    solver::require_sound(prop);
  } catch (const solver::MemberError& error) {
    table.refuse("capacity", error.found(), error.due());
  }
  return prop;
}

solver::NeedleProp read_needle_prop(const JobTable& table, solver::LoadDuration duration,
                                    const MemberTables& members) {
  solver::NeedleProp prop = read(table, solver::fields::needle_prop);
  const bool inside = prop.side == solver::PropSide::inside;
  if (prop.mark.empty()) prop.mark = inside ? "inner" : "outer";
  if (prop.action == solver::PropAction::down && !table.has("level")) {
    table.refuse("level", "nothing", "the level of what it is wedged against is due");
  }
  prop.prop = read_prop_with_capacity(table, members);
  solver::TimberMember& sole = prop.footing.sole.timber;
  sole.strength_class = read_strength_class(table, "sole_timber", members);
  sole.duration = duration;
  sole.service = inside ? solver::ServiceClass::two : solver::ServiceClass::three;
  read_ground(table, members, prop.footing);
  return prop;
}

}  // namespace

solver::NeedleFrame read_needle_frame(const NamedTable& entry, const MemberTables& members) {
  const JobTable& table = entry.table;
  solver::NeedleFrame frame;
  frame.name = entry.name;
  frame.member = read_member(table, members);
  frame = read(table, solver::fields::needle_frame, std::move(frame));
  if (table.has("leaves")) frame.leaves = table.stretches("leaves");
  const auto duration = table.choice<solver::LoadDuration>("duration");
  for (const NamedTable& prop : table.tables("prop")) {
    frame.props.push_back(read_needle_prop(prop.table, duration, members));
  }
  return frame;
}

}  // namespace deadshore::io
