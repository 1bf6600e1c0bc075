#include "solver/checks/prop_checks.h"

#include "solver/checks/check.h"
#include "solver/members/error.h"

#include <fmt/format.h>

namespace deadshore::solver {

namespace {

std::optional<double> safe_load_of(const Prop& prop, double extension, SafeLoadBasis basis) {
  try {
    return safe_load(prop, extension, basis).load;
  } catch (const MemberError&) {
    return std::nullopt;
  }
}

}  // namespace

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

std::optional<PropChoice> weakest_prop_for(double load, double extension,
                                           std::span<const Prop> props, SafeLoadBasis basis) {
  std::optional<PropChoice> weakest;
  for (const Prop& prop : props) {
    const std::optional<double> safe = safe_load_of(prop, extension, basis);
    if (!safe || *safe < load || (weakest && *safe >= weakest->safe_load)) continue;
    weakest = PropChoice{&prop, *safe};
  }
  return weakest;
}

}  // namespace deadshore::solver
