#include "solver/loads/chimney_checks.h"

#include <fmt/format.h>

#include <algorithm>

namespace deadshore::solver {
namespace {

/// Whether the cut takes away, by the 45-degree rule, what the breast stands on.
bool loses_its_footing(const Chimney& chimney, const mesh::WallShape& wall) {
  const double rise = std::max(0.0, chimney.level - wall.cut.soffit);
  const double left = wall.cut.left + rise;
  const double right = wall.cut.right - rise;
  return chimney.x - 0.5 * chimney.width < right && chimney.x + 0.5 * chimney.width > left;
}

double weight_of(const Chimney& chimney, const TakeDown& take_down) {
  const auto found = std::ranges::find(take_down.loads, chimney.name, &TakenDown::element);
  return found == take_down.loads.end() ? 0.0 : found->sums.dead;
}

Check breast_check(const Chimney& chimney, double weight, double thickness) {
  const double lever = 0.5 * (thickness + chimney.projection);
  Check check = not_verified(
      "what holds the breast", "none",
      fmt::format(
          "{:.1f} kN stand {:.0f} mm proud of the wall, so up to {:.1f} kNm turn it over; the "
          "weight is taken at the wall's middle, and neither that moment nor what carries the "
          "breast itself (its own needles, a bracket or beam under it) is worked out here",
          weight / 1e3, chimney.projection, weight * lever / 1e6));
  check.working = fmt::format("{:.1f} kN x ({:.0f} + {:.0f})/2 mm = {:.1f} kNm", weight / 1e3,
                              thickness, chimney.projection, weight * lever / 1e6);
  return check;
}

}  // namespace

std::vector<Check> check_chimneys(const Job& job, const TakeDown& take_down) {
  std::vector<Check> checks;
  for (const Chimney& chimney : job.house.chimneys) {
    if (!loses_its_footing(chimney, job.wall)) continue;
    const auto labelled_checks =
        labelled({breast_check(chimney, weight_of(chimney, take_down), job.thickness)},
                 chimney.name, "every stage");
    checks.insert(checks.end(), labelled_checks.begin(), labelled_checks.end());
  }
  return checks;
}

}  // namespace deadshore::solver
