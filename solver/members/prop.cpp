#include "solver/members/prop.h"

#include "solver/members/error.h"
#include "solver/members/prop_second_order.h"
#include "solver/members/steel_member.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace deadshore::solver {

namespace {

using std::numbers::pi;

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

constexpr double kN = 1000.0;

/// CIRIA TN79 (1977), safe loads with an eccentricity up to 25 mm, as quoted in later guidance.
const CapacityTable& tn79_row(const Prop& prop) {
  static const CapacityTable sizes_1_to_3{"CIRIA TN79 (1977), sizes 1 to 3",
                                          {{2000.0, 17.0 * kN},
                                           {2500.0, 17.0 * kN},
                                           {2750.0, 17.0 * kN},
                                           {3000.0, 15.0 * kN},
                                           {3250.0, 13.0 * kN},
                                           {3500.0, 11.0 * kN},
                                           {3750.0, 10.0 * kN}}};
  static const CapacityTable size_4{"CIRIA TN79 (1977), size 4",
                                    {{3250.0, 17.0 * kN},
                                     {3500.0, 14.0 * kN},
                                     {3750.0, 11.0 * kN},
                                     {4000.0, 10.0 * kN},
                                     {4250.0, 9.0 * kN},
                                     {4500.0, 8.0 * kN},
                                     {4750.0, 7.0 * kN}}};
  constexpr double longest_size_3 = 3950.0;  // BS 4074, from memory, unverified
  return prop.longest <= longest_size_3 ? sizes_1_to_3 : size_4;
}

SafeLoad by_table(const CapacityTable& table, double extension) {
  const double load = capacity_at(table, extension);
  return {load, table.source, fmt::format("{:.2f} kN at {:.2f} m", load / kN, extension / 1000.0)};
}

SafeLoad by_tn79(const Prop& prop, double extension) {
  const CapacityTable& row = tn79_row(prop);
  const double last = row.rows.back().extension;
  if (extension > last)
    throw MemberError(prop.name, fmt::format("an extension of {:.3f} m", extension / 1000.0),
                      fmt::format("{} ends at {:.2f} m: give a supplier's table or choose another "
                                  "basis",
                                  row.source, last / 1000.0));
  SafeLoad safe = by_table(row, std::max(extension, row.rows.front().extension));
  safe.working =
      fmt::format("{:.2f} kN at {:.2f} m (e <= 25 mm)", safe.load / kN, extension / 1000.0);
  return safe;
}

SafeLoad by_en_1065(const Prop& prop, double extension) {
  const double strength = characteristic_strength(prop, extension);
  return {strength / en_1065_divisor, "EN 1065 / 1.65",
          fmt::format("{:.2f} kN at {:.2f} m / (1.5 x 1.1) (e of the standard, about 10 mm)",
                      strength / kN, extension / 1000.0)};
}

SafeLoad by_second_order(const Prop& prop, double extension) {
  const double strength = eccentric_strength(prop, extension, prop_eccentricity);
  return {strength / en_1065_divisor, "second order, / 1.65",
          fmt::format("yields at {:.2f} kN at {:.2f} m, e {:.0f} mm, / (1.5 x 1.1)", strength / kN,
                      extension / 1000.0, prop_eccentricity)};
}

SafeLoad lower_of_both(const Prop& prop, double extension) {
  if (prop.supplier_table) return by_table(*prop.supplier_table, extension);
  if (!prop.prop_class) return by_tn79(prop, extension);
  const SafeLoad off_axis = by_second_order(prop, extension);
  const SafeLoad old = by_tn79(prop, extension);
  const SafeLoad modern = by_en_1065(prop, extension);
  const SafeLoad& tabled = modern.load <= old.load ? modern : old;
  return off_axis.load < tabled.load ? off_axis : tabled;
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
  const double compliance = prop.shortest / (steel_E * prop.outer.area()) +
                            (extension - prop.shortest) / (steel_E * prop.inner.area());
  return 1.0 / compliance;
}

double lean_force(double load) {
  return load * std::tan(prop_lean_degrees * pi / 180.0);
}

SafeLoad safe_load(const Prop& prop, double extension, SafeLoadBasis basis) {
  require_within_range(prop, extension);
  switch (basis) {
    case SafeLoadBasis::lower_of_both:
      return lower_of_both(prop, extension);
    case SafeLoadBasis::en_1065:
      return by_en_1065(prop, extension);
    case SafeLoadBasis::ciria_tn79:
      return by_tn79(prop, extension);
    case SafeLoadBasis::supplier_table:
      if (!prop.supplier_table)
        throw MemberError(prop.name, "no supplier's table", "a capacity table of the prop is due");
      return by_table(*prop.supplier_table, extension);
  }
  return {};
}

}  // namespace deadshore::solver
