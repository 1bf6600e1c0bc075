#include "io/commands/name_lists.h"

#include "io/commands/terminal.h"
#include "io/tables/rows_by_name.h"
#include "io/tables/usual_values.h"
#include "solver/members/error.h"
#include "solver/members/prop.h"

#include <fmt/format.h>

#include <array>
#include <fnmatch.h>
#include <functional>
#include <string_view>
#include <vector>

namespace deadshore::io {

namespace {

/// The rows whose name holds `pattern`, whatever its case and spaces; * and ? stand for any
/// letters. `name_of` gives a row's name, `kind` is in words. Throws UnknownMember, with the
/// nearest known name, where there is none.
template <class Row, class NameOf>
std::vector<const Row*> matching(const std::vector<Row>& rows, std::string_view pattern,
                                 const std::string& kind, NameOf name_of) {
  const std::string wanted = fmt::format("*{}*", bare_name(pattern));
  std::vector<const Row*> found;
  std::vector<std::string_view> known;
  for (const Row& row : rows) {
    const std::string& name = std::invoke(name_of, row);
    if (fnmatch(wanted.c_str(), bare_name(name).c_str(), 0) == 0) found.push_back(&row);
    known.push_back(name);
  }
  if (found.empty()) {
    throw UnknownMember(kind, std::string(pattern),
                        known.empty() ? "" : std::string(nearest_name(pattern, known)));
  }
  return found;
}

std::string plain(double value) {
  return fmt::format("{:g}", value);
}

std::string rounded(double value) {
  return fmt::format("{:.{}f}", value, value < 100.0 ? 1 : 0);
}

std::string section_table(const std::vector<const SteelRow*>& rows) {
  TextTable table{{{"section", ""},
                   {"h", "mm"},
                   {"b", "mm"},
                   {"tw", "mm"},
                   {"tf", "mm"},
                   {"mass", "kg/m"},
                   {"A", "cm2"},
                   {"I_y", "cm4"},
                   {"W_el", "cm3"},
                   {"W_pl", "cm3"}},
                  {}};
  for (const SteelRow* row : rows) {
    const solver::SteelSection& section = row->section;
    const solver::SteelProperties p = solver::properties_of(section);
    table.rows.push_back(
        {source_line(row->source),
         {section.name, plain(section.h), plain(section.b), plain(section.tw), plain(section.tf),
          rounded(p.mass), rounded(p.A / 1e2), rounded(p.I_y / 1e4), rounded(p.W_el_y / 1e3),
          rounded(p.W_pl_y / 1e3)}});
  }
  return text_of(table);
}

std::string every_property(const solver::SteelSection& section) {
  const solver::SteelProperties p = solver::properties_of(section);
  struct Line {
    const char* name;
    double value;
    const char* unit;
    const char* meaning;
  };
  const std::array<Line, 16> lines{{
      {"h", section.h, "mm", "depth"},
      {"b", section.b, "mm", "width"},
      {"tw", section.tw, "mm", "web, or wall"},
      {"tf", section.tf, "mm", "flange, or wall"},
      {"mass", p.mass, "kg/m", "at 7850 kg/m3"},
      {"A", p.A / 1e2, "cm2", "area"},
      {"A_v", p.A_v / 1e2, "cm2", "shear area, EN 1993-1-1 6.2.6(3)"},
      {"I_y", p.I_y / 1e4, "cm4", "second moment of area, strong axis"},
      {"I_z", p.I_z / 1e4, "cm4", "same, weak axis"},
      {"W_el_y", p.W_el_y / 1e3, "cm3", "elastic modulus, strong axis"},
      {"W_el_z", p.W_el_z / 1e3, "cm3", "same, weak axis, to the farther edge"},
      {"W_pl_y", p.W_pl_y / 1e3, "cm3", "plastic modulus, strong axis"},
      {"W_pl_z", p.W_pl_z / 1e3, "cm3", "same, weak axis"},
      {"i_z", p.i_z / 10.0, "cm", "radius of gyration, weak axis"},
      {"I_t", p.I_t / 1e4, "cm4", "torsion"},
      {"I_w", p.I_w / 1e12, "dm6", "warping"},
  }};
  std::string text = "\n";
  for (const Line& line : lines) {
    text +=
        fmt::format("{:<8}{:>12.4g}  {:<6}  {}\n", line.name, line.value, line.unit, line.meaning);
  }
  return text;
}

/// A dash where the prop, or what its safe load comes from, does not reach so far.
std::string safe_load_at(const solver::Prop& prop, double extension) {
  try {
    return fmt::format("{:.1f}", solver::safe_load(prop, extension).load / 1e3);
  } catch (const solver::MemberError&) {
    return "-";
  }
}

}  // namespace

std::string list_of_sections(const MemberTables& tables, std::string_view pattern) {
  const auto rows =
      matching(tables.steel, pattern, "steel section",
               [](const SteelRow& row) -> const std::string& { return row.section.name; });
  std::string text = section_table(rows);
  if (rows.size() == 1) text += every_property(rows.front()->section);
  return text + "\n" +
         wrapped(
             "Mass, area, second moment and moduli about the strong axis, all worked out from "
             "the dimensions.");
}

std::string list_of_timber(const MemberTables& tables, std::string_view pattern) {
  TextTable table{{{"class", ""},
                   {"f_m", "N/mm2"},
                   {"f_c_0", "N/mm2"},
                   {"f_c_90", "N/mm2"},
                   {"f_v", "N/mm2"},
                   {"E_mean", "N/mm2"},
                   {"E_05", "N/mm2"},
                   {"G", "N/mm2"},
                   {"rho_k", "kg/m3"},
                   {"mean", "kg/m3"}},
                  {}};
  const auto name_of = [](const TimberRow& row) -> const std::string& {
    return row.strength_class.name;
  };
  for (const TimberRow* row : matching(tables.timber, pattern, "timber class", name_of)) {
    const solver::TimberClass& c = row->strength_class;
    table.rows.push_back(
        {source_line(row->source),
         {c.name, plain(c.f_m_k), plain(c.f_c_0_k), plain(c.f_c_90_k), plain(c.f_v_k),
          plain(c.E_0_mean), plain(c.E_0_05), plain(c.G_mean), plain(c.rho_k), plain(c.rho_mean)}});
  }
  return text_of(table) + "\n" +
         wrapped(
             "Characteristic strengths: bending, compression along and across the grain, "
             "shear; moduli; density, characteristic and mean.");
}

std::string list_of_props(const MemberTables& tables, std::string_view pattern) {
  constexpr std::array<double, 9> extensions = {1.5, 2.0, 2.5, 3.0, 3.5, 4.0, 4.5, 5.0, 5.5};
  TextTable table{{{"prop", ""}, {"from", "m"}, {"to", "m"}}, {}};
  for (const double metres : extensions) {
    table.columns.push_back({fmt::format("{:.1f}", metres), "kN"});
  }
  for (const solver::Prop* prop : matching(tables.props, pattern, "prop", &solver::Prop::name)) {
    std::vector<std::string> cells = {prop->name, fmt::format("{:.2f}", prop->shortest / 1e3),
                                      fmt::format("{:.2f}", prop->longest / 1e3)};
    for (const double metres : extensions) cells.push_back(safe_load_at(*prop, 1e3 * metres));
    const std::string table_source =
        prop->supplier_table ? fmt::format(" Safe loads: {}.", prop->supplier_table->source) : "";
    table.rows.push_back({source_line(prop->source) + table_source, std::move(cells)});
  }
  return text_of(table) + "\n" +
         wrapped(
             "Safe load of unfactored load at extensions in m, out of plumb up to 1.5 degrees and "
             "25 mm eccentric: a supplier's table where there is one, else the lower of EN "
             "1065 over 1.65 and CIRIA TN79. No value where neither reaches. The sheet of the "
             "prop in your hand comes first.");
}

std::string list_of_grounds(const MemberTables& tables, std::string_view pattern) {
  TextTable table{{{"ground", ""}, {"presumed bearing", "kN/m2"}, {"subgrade modulus", "MN/m3"}},
                  {}};
  for (const solver::Ground* ground :
       matching(tables.grounds, pattern, "ground", &solver::Ground::name)) {
    const auto modulus = usual_subgrade_modulus(ground->name);
    table.rows.push_back(
        {source_line(ground->source),
         {ground->name, ground->presumed_bearing ? plain(*ground->presumed_bearing * 1e3) : "none",
          modulus ? plain(*modulus * 1e3) : "none"}});
  }
  return text_of(table) + "\n" +
         wrapped(
             "Presumed bearing for unfactored loads, the low end of the published range; sand "
             "and gravel: for dry ground and soles at least 1 m wide, small soles carry less. "
             "None: nothing may be presumed, somebody has to look. Subgrade modulus: low ends "
             "of Terzaghi's ranges of 1955 (from memory, unverified), taken where a job gives "
             "none.");
}

std::string list_of_materials(const WeightTables& tables, std::string_view pattern) {
  TextTable table{{{"material", ""}, {"by volume", "kN/m3"}, {"by area", "kN/m2"}}, {}};
  for (const WeightRow* row : matching(tables.materials, pattern, "material", &WeightRow::name)) {
    table.rows.push_back(
        {source_line(row->source),
         {row->name, row->unit_weight ? fmt::format("{:g}", *row->unit_weight * 1e6) : "-",
          row->area_weight ? fmt::format("{:g}", *row->area_weight * 1e3) : "-"}});
  }
  return text_of(table) + "\n" +
         wrapped(
             "Weights by volume go with a thickness; those by area are of the face, thickness "
             "and all. Old houses hide surprises: open up and look before you trust a name.");
}

std::string list_of_uses(const WeightTables& tables, std::string_view pattern) {
  TextTable table{{{"use", ""}, {"load", "kN/m2"}, {"concentrated", "kN"}}, {}};
  for (const UseRow* row : matching(tables.uses, pattern, "use", &UseRow::name)) {
    table.rows.push_back(
        {source_line(row->source),
         {row->name, fmt::format("{:g}", row->load * 1e3),
          row->concentrated > 0.0 ? fmt::format("{:g}", row->concentrated / 1e3) : "-"}});
  }
  return text_of(table) + "\n" +
         wrapped(
             "Characteristic imposed loads over the whole area; the concentrated load is what "
             "a single joist must stand, and is not added to a wall.");
}

}  // namespace deadshore::io
