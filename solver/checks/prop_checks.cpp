#include "solver/checks/prop_checks.h"

#include "solver/checks/presented_units.h"

#include <fmt/format.h>

namespace deadshore::solver {

Check check_prop(const Prop& prop, double extension, double load, SafeLoadBasis basis) {
  const SafeLoad safe = safe_load(prop, extension, basis);
  Check check;
  check.check = "prop strength";
  check.clause = safe.clause;
  check.demand = load / kN;
  check.capacity = safe.load / kN;
  check.unit = "kN";
  check.working = fmt::format("{}: {}; unfactored load", prop.name, safe.working);
  return check;
}

}  // namespace deadshore::solver
