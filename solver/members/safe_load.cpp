#include "solver/members/safe_load.h"

#include "solver/members/error.h"

#include <fmt/format.h>

#include <algorithm>

namespace deadshore::solver {

namespace {

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
          fmt::format("{:.2f} kN at {:.2f} m / (1.5 x 1.1)", strength / kN, extension / 1000.0)};
}

SafeLoad lower_of_both(const Prop& prop, double extension) {
  if (prop.supplier_table) return by_table(*prop.supplier_table, extension);
  if (!prop.prop_class) return by_tn79(prop, extension);
  SafeLoad old = by_tn79(prop, extension);
  SafeLoad modern = by_en_1065(prop, extension);
  return modern.load <= old.load ? modern : old;
}

}  // namespace

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
