#include "solver/needle/bracing_checks.h"

#include <fmt/format.h>

#include <numbers>
#include <utility>

namespace deadshore::solver {

namespace {

constexpr double coupler_load = 5000.0;  // N, safe, of a swivel coupler; common practice, no source
constexpr double lacing_above = 3000.0;  // mm of prop; common practice, no source

Check bracing_of(const Bracing& bracing, const PropRowLoad& row) {
  const double force = bracing.horizontal * row.total;
  Check check;
  check.member = row.side == PropSide::inside ? "inner props" : "outer props";
  check.stage = "every stage";
  check.check = "bracing of the row";
  check.clause = "horizontal force: BS 5975, from memory; coupler: common practice, no source";
  check.demand = std::numbers::sqrt2 * force / kN;
  check.capacity = coupler_load / kN;
  check.unit = "kN";
  check.working = fmt::format(
      "{:.1f}% of {:.1f} kN on {} props is {:.2f} kN along the row, and as much across it; a "
      "diagonal at 45 degrees each way, {:.2f} kN in it; ledgers at head and foot, and half-way up "
      "where props are over {:.0f} m; each head and foot fixed for {:.2f} kN",
      100.0 * bracing.horizontal, row.total / kN, row.count, force / kN, check.demand,
      lacing_above / 1000.0, bracing.horizontal * row.largest / kN);
  if (bracing.tied_to.empty()) {
    check.not_verified = check.passes();
    check.caution =
        "props stand only if they are braced so, and nothing is named that takes this force: give "
        "tied_to of [bracing]";
  } else {
    check.caution = "tied to " + bracing.tied_to + ", which has to take this force";
  }
  return check;
}

}  // namespace

std::vector<Check> check_bracing(const Bracing& bracing, const std::vector<PropRowLoad>& rows) {
  std::vector<Check> checks;
  for (const PropRowLoad& row : rows)
    if (row.count > 0) checks.push_back(bracing_of(bracing, row));
  return checks;
}

}  // namespace deadshore::solver
