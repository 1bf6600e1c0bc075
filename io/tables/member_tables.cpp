#include "io/tables/member_tables.h"

#include "io/error.h"
#include "io/files/whole_file.h"
#include "io/job/schema.h"
#include "io/job/toml_text.h"
#include "io/tables/member_data.h"
#include "io/tables/member_row.h"
#include "io/tables/rows_by_name.h"
#include "solver/members/error.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <utility>

namespace deadshore::io {

namespace {

const std::string& name_of(const SteelRow& row) {
  return row.section.name;
}
const std::string& name_of(const TimberRow& row) {
  return row.strength_class.name;
}
const std::string& name_of(const solver::Prop& prop) {
  return prop.name;
}
const std::string& name_of(const solver::Ground& ground) {
  return ground.name;
}

constexpr auto name_in = [](const auto& member) -> const std::string& { return name_of(member); };

template <class Member>
const Member& find_member(const std::vector<Member>& members, std::string_view name,
                          const std::string& kind) {
  return find_row(members, name, kind, name_in);
}

template <class Member>
void put(std::vector<Member>& members, Member member) {
  put_row(members, std::move(member), name_in);
}

/// Runs `check` and turns what the solver refuses into an error with file and line.
template <class Check>
void refuse_unsound(const MemberRow& row, Check check) {
  try {
    check();
  } catch (const solver::MemberError& error) {
    row.refuse("", error.found(), error.due());
  }
}

struct PublishedValue {
  const char* name;
  double from_dimensions;
};

/// Refuses published area, second moment and modulus that the dimensions do not give.
void compare_with_published(const MemberRow& row, const solver::SteelProperties& properties) {
  if (!row.has("published")) return;
  const std::array<PublishedValue, 3> values{{{"area in cm2", properties.A / 1e2},
                                              {"second moment in cm4", properties.I_y / 1e4},
                                              {"modulus in cm3", properties.W_el_y / 1e3}}};
  const std::vector<double> published = row.numbers("published", values.size());
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (std::abs(published[i] / values[i].from_dimensions - 1.0) <= 0.01) continue;
    row.refuse("published", fmt::format("{} as {}", published[i], values[i].name),
               fmt::format("the dimensions give {:.4g}", values[i].from_dimensions));
  }
}

solver::SteelSection read_section(const MemberRow& row, solver::SectionKind kind) {
  solver::SteelSection section{row.text("name"), kind};
  switch (kind) {
    case solver::SectionKind::i_section:
    case solver::SectionKind::channel:
      section.h = row.number("h");
      section.b = row.number("b");
      section.tw = row.number("tw");
      section.tf = row.number("tf");
      section.r = row.number("r");
      break;
    case solver::SectionKind::rectangular_hollow:
      section.h = row.number("h");
      section.b = row.number("b");
      section.tw = section.tf = row.number("t");
      break;
    case solver::SectionKind::circular_hollow:
      section.h = section.b = row.number("d");
      section.tw = section.tf = row.number("t");
      break;
  }
  return section;
}

void add_steel(const MemberRow& group, MemberTables& tables) {
  using solver::SectionKind;
  constexpr std::array<SectionKind, 4> kinds = {SectionKind::i_section, SectionKind::channel,
                                                SectionKind::rectangular_hollow,
                                                SectionKind::circular_hollow};
  const std::array<std::vector<std::string_view>, 4> keys{
      {{"name", "h", "b", "tw", "tf", "r", "published"},
       {"name", "h", "b", "tw", "tf", "r", "published"},
       {"name", "h", "b", "t", "published"},
       {"name", "d", "t", "published"}}};
  const std::size_t kind =
      group.choice("kind", {"I", "channel", "rectangular hollow", "circular hollow"});
  const std::string source = group.text("source");
  for (const MemberRow& row : group.rows("rows", keys[kind])) {
    const solver::SteelSection section = read_section(row, kinds[kind]);
    refuse_unsound(row, [&] { compare_with_published(row, solver::properties_of(section)); });
    put(tables.steel, SteelRow{section, source});
  }
}

void add_timber(const MemberRow& group, MemberTables& tables) {
  const std::string source = group.text("source");
  for (const MemberRow& row :
       group.rows("rows", {"name", "f_m", "f_c_0", "f_c_90", "f_v", "E_0_mean", "E_0_05", "G_mean",
                           "rho_k", "rho_mean"})) {
    put(tables.timber,
        TimberRow{{row.text("name"), row.number("f_m"), row.number("f_c_0"), row.number("f_c_90"),
                   row.number("f_v"), row.number("E_0_mean"), row.number("E_0_05"),
                   row.number("G_mean"), row.number("rho_k"), row.number("rho_mean")},
                  source});
  }
}

solver::Tube read_tube(const MemberRow& group, std::string_view key) {
  const std::vector<double> values = group.numbers(key, 2);
  return {values[0], values[1]};
}

solver::CapacityTable read_capacity(const MemberRow& capacity) {
  const std::vector<double> extensions = capacity.numbers("extension");
  const std::vector<double> loads = capacity.numbers("load", extensions.size());
  solver::CapacityTable table{capacity.text("source"), {}};
  for (std::size_t i = 0; i < extensions.size(); ++i)
    table.rows.push_back({extensions[i], 1000.0 * loads[i]});
  return table;
}

void add_props(const MemberRow& group, MemberTables& tables) {
  using solver::PropClass;
  constexpr std::array<PropClass, 5> classes = {PropClass::a, PropClass::b, PropClass::c,
                                                PropClass::d, PropClass::e};
  for (const MemberRow& row : group.rows("rows", {"name", "shortest", "longest", "capacity"})) {
    solver::Prop prop;
    prop.name = row.text("name");
    prop.shortest = row.number("shortest");
    prop.longest = row.number("longest");
    prop.outer = read_tube(group, "outer");
    prop.inner = read_tube(group, "inner");
    if (group.has("class"))
      prop.prop_class = classes[group.choice("class", {"A", "B", "C", "D", "E"})];
    if (row.has("capacity"))
      prop.supplier_table = read_capacity(row.row("capacity", {"source", "extension", "load"}));
    prop.source = group.text("source");
    refuse_unsound(row, [&] { solver::require_sound(prop); });
    put(tables.props, std::move(prop));
  }
}

void add_ground(const MemberRow& group, MemberTables& tables) {
  for (const MemberRow& row :
       group.rows("rows", {"name", "presumed", "granular", "friction", "slab"})) {
    constexpr double kN_per_m2 = 1e-3;
    solver::Ground ground{row.text("name"), {}, row.flag("granular"), group.text("source")};
    if (row.has("presumed")) ground.presumed_bearing = row.number("presumed") * kN_per_m2;
    if (row.has("friction")) ground.friction_angle = row.number("friction");
    ground.slab = row.flag("slab");
    put(tables.grounds, std::move(ground));
  }
}

/// A kind of group, its keys besides `source` and `rows`, and what adds its rows.
struct GroupKind {
  std::string_view name;
  std::vector<std::string_view> keys;
  void (*add)(const MemberRow& group, MemberTables& tables);
};

std::vector<GroupKind> group_kinds() {
  return {{"steel_group", {"source", "rows", "kind"}, add_steel},
          {"timber_group", {"source", "rows"}, add_timber},
          {"prop_group", {"source", "rows", "class", "outer", "inner"}, add_props},
          {"ground_group", {"source", "rows"}, add_ground}};
}

}  // namespace

UnknownMember::UnknownMember(const std::string& kind, std::string name, std::string nearest)
    : std::runtime_error(fmt::format(
          "found an unknown {} \"{}\"; {}", kind, printable(name),
          nearest.empty() ? "none is known"
                          : fmt::format("the nearest known one is \"{}\"", printable(nearest)))),
      name_(std::move(name)),
      nearest_(std::move(nearest)) {}

const SteelRow& MemberTables::steel_section(std::string_view name) const {
  return find_member(steel, name, "steel section");
}

const TimberRow& MemberTables::timber_class(std::string_view name) const {
  return find_member(timber, name, "timber class");
}

const solver::Prop& MemberTables::prop(std::string_view name) const {
  return find_member(props, name, "prop");
}

const solver::Ground& MemberTables::ground(std::string_view name) const {
  return find_member(grounds, name, "ground");
}

MemberTables built_in_member_tables() {
  MemberTables tables;
  for (const MemberData& file : built_in_member_data())
    add_member_tables(file.text, std::string(file.name), tables);
  return tables;
}

void add_member_tables(std::string_view text, const std::string& file_name, MemberTables& tables) {
  const toml::table root = parse_toml(text, file_name, "a file of tables");
  const std::vector<GroupKind> kinds = group_kinds();
  const MemberRow file(root, file_name, "", table_groups());
  MemberTables extended = tables;
  for (const GroupKind& kind : kinds) {
    if (!file.has(kind.name)) continue;
    for (const MemberRow& group : file.rows(kind.name, kind.keys)) kind.add(group, extended);
  }
  tables = std::move(extended);
}

void add_member_file(const std::filesystem::path& path, MemberTables& tables) {
  add_member_tables(read_file(path), path.string(), tables);
}

}  // namespace deadshore::io
