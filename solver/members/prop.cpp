#include "solver/members/prop.h"

#include "solver/members/error.h"
#include "solver/members/steel_grade.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace deadshore::solver {

namespace {

constexpr double pi = std::numbers::pi;

double in_metres(double millimetres) {
  return millimetres / 1000.0;
}

bool is_sound(const Tube& tube) {
  return tube.wall > 0.0 && 2.0 * tube.wall < tube.diameter && std::isfinite(tube.diameter);
}

void require_sound(const CapacityTable& table, const std::string& prop) {
  if (table.rows.size() < 2)
    throw MemberError(prop, fmt::format("a capacity table of {} rows", table.rows.size()),
                      "at least two are due");
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const CapacityTable::Row row = table.rows[i];
    if (!(row.load > 0.0) || !std::isfinite(row.load))
      throw MemberError(prop,
                        fmt::format("a capacity of {} kN at {:.2f} m", row.load / 1000.0,
                                    in_metres(row.extension)),
                        "capacities above 0 are due");
    if (i > 0 && !(row.extension > table.rows[i - 1].extension))
      throw MemberError(
          prop,
          fmt::format("{:.2f} m after {:.2f} m in the capacity table", in_metres(row.extension),
                      in_metres(table.rows[i - 1].extension)),
          "rising extensions are due");
  }
}

}  // namespace

double Tube::area() const {
  return pi * wall * (diameter - wall);
}

double Tube::inertia() const {
  return pi / 64.0 * (std::pow(diameter, 4) - std::pow(diameter - 2.0 * wall, 4));
}

void require_sound(const Prop& prop) {
  if (!(prop.shortest > 0.0) || !(prop.longest > prop.shortest) || !std::isfinite(prop.longest))
    throw MemberError(prop.name,
                      fmt::format("a range of {:.2f} m to {:.2f} m", in_metres(prop.shortest),
                                  in_metres(prop.longest)),
                      "a shortest and a longer extension above 0 are due");
  if (!is_sound(prop.outer) || !is_sound(prop.inner) ||
      prop.inner.diameter > prop.outer.diameter - 2.0 * prop.outer.wall)
    throw MemberError(prop.name,
                      fmt::format("tubes {} x {} in {} x {} mm", prop.inner.diameter,
                                  prop.inner.wall, prop.outer.diameter, prop.outer.wall),
                      "an inner tube that fits into the outer one is due");
  if (prop.supplier_table) require_sound(*prop.supplier_table, prop.name);
}

void require_within_range(const Prop& prop, double extension) {
  if (extension >= prop.shortest && extension <= prop.longest) return;
  throw MemberError(prop.name, fmt::format("an extension of {:.3f} m", in_metres(extension)),
                    fmt::format("{:.2f} m to {:.2f} m is due", in_metres(prop.shortest),
                                in_metres(prop.longest)));
}

double capacity_at(const CapacityTable& table, double extension) {
  const auto& rows = table.rows;
  if (rows.empty() || !(extension >= rows.front().extension) ||
      !(extension <= rows.back().extension)) {
    throw MemberError(table.source, fmt::format("an extension of {:.3f} m", in_metres(extension)),
                      rows.empty() ? "a table with rows is due"
                                   : fmt::format("the table holds from {:.2f} m to {:.2f} m",
                                                 in_metres(rows.front().extension),
                                                 in_metres(rows.back().extension)));
  }
  const auto above = std::lower_bound(
      rows.begin(), rows.end(), extension,
      [](const CapacityTable::Row& row, double value) { return row.extension < value; });
  if (above == rows.begin()) return above->load;
  const CapacityTable::Row& below = *(above - 1);
  const double part = (extension - below.extension) / (above->extension - below.extension);
  return below.load + part * (above->load - below.load);
}

double characteristic_strength(const Prop& prop, double extension) {
  require_within_range(prop, extension);
  if (!prop.prop_class)
    throw MemberError(prop.name, "a prop without a class of EN 1065", "another basis is due");
  const double l = in_metres(extension);
  const double slender = in_metres(prop.longest) / (l * l);
  switch (*prop.prop_class) {
    case PropClass::a:
      return 1000.0 * std::min(51.0 * slender, 44.0);
    case PropClass::b:
      return 1000.0 * std::min(68.0 * slender, 51.0);
    case PropClass::c:
      return 1000.0 * std::min(102.0 * slender, 59.5);
    case PropClass::d:
      return 34000.0;
    case PropClass::e:
      return 51000.0;
  }
  return 0.0;
}

double axial_stiffness(const Prop& prop, double extension) {
  require_within_range(prop, extension);
  const double give = prop.shortest / (steel_E * prop.outer.area()) +
                      (extension - prop.shortest) / (steel_E * prop.inner.area());
  return 1.0 / give;
}

double lean_force(double load) {
  return load * std::tan(prop_lean_degrees * pi / 180.0);
}

}  // namespace deadshore::solver
