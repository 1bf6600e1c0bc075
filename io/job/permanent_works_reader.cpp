#include "io/job/permanent_works_reader.h"

#include "io/job/job_wording.h"
#include "io/tables/member_choice.h"

#include <algorithm>

namespace deadshore::io {

namespace {

int read_count(const JobTable& table) {
  const double count = table.number("count");
  if (count != 1.0 && count != 2.0) table.refuse("count", table.written("count"), "1 or 2 is due");
  return count == 1.0 ? 1 : 2;
}

solver::Padstone read_padstone(const JobTable& table) {
  return {.length = table.quantity("length"),
          .depth = table.quantity("depth"),
          .E = table.quantity("E"),
          .nu = table.number("nu"),
          .unit_weight = table.quantity("unit_weight"),
          .strength = table.quantity("strength")};
}

solver::DryPacking read_dry_packing(const JobTable& table) {
  return {.thickness = table.quantity("thickness"),
          .E = table.quantity("E"),
          .strength = table.quantity("strength"),
          .hardening = table.number("hardening")};
}

}  // namespace

std::optional<BeamTables> find_beam_tables(const JobTable& top) {
  const std::vector<NamedTable> beams = top.tables("beam");
  if (beams.empty()) return std::nullopt;
  const JobTable& beam = beams.front().table;
  return BeamTables{beam, beam.tables("padstone").front().table, beam.table_or_defaults("packing")};
}

solver::PermanentBeam read_beam(const BeamTables& tables, const MemberTables& members) {
  const JobTable& table = tables.beam;
  return {.name = table.text("name"),
          .member = read_steel_of_tables(table, members),
          .count = read_count(table),
          .bearing = table.quantity("bearing"),
          .padstone = read_padstone(tables.padstone),
          .packing = read_dry_packing(tables.packing),
          .restraint_spacing = table.quantity("restraint_spacing"),
          .deflection_ratio = table.number("deflection_ratio")};
}

solver::DeadShore read_dead_shore(const JobTable& table,
                                  const std::vector<solver::LineLoad>& loads) {
  const std::string load = table.text("carries");
  const auto carried = std::ranges::find(loads, load, &solver::LineLoad::name);
  if (carried == loads.end()) {
    table.refuse("carries", in_quotes(load), "due: the name of one of the line loads");
  }
  solver::DeadShore shore{.name = table.text("name"),
                          .carries = solver::LineLoadId(carried - loads.begin()),
                          .share = table.number("share"),
                          .joist_ends = {}};
  if (table.has("joist_gap") || table.has("joist_stiffness") || table.has("joist_spacing")) {
    shore.joist_ends = {.gap = table.quantity("joist_gap"),
                        .stiffness = table.quantity("joist_stiffness"),
                        .spacing = table.quantity("joist_spacing")};
  }
  return shore;
}

}  // namespace deadshore::io
