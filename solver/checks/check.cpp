#include "solver/checks/check.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace deadshore::solver {

double Check::utilisation() const {
  constexpr double no_limit = std::numeric_limits<double>::infinity();
  if (not_verified || std::isnan(demand) || std::isnan(capacity)) return no_limit;
  if (demand <= 0.0) return 0.0;
  return capacity > 0.0 ? demand / capacity : no_limit;
}

bool Check::passes() const {
  return utilisation() <= 1.0;
}

Check not_verified(std::string check, std::string clause, std::string reason) {
  Check result;
  result.check = std::move(check);
  result.clause = std::move(clause);
  result.not_verified = true;
  result.caution = std::move(reason);
  return result;
}

std::vector<Check> labelled(std::vector<Check> checks, const std::string& member,
                            const std::string& stage) {
  for (Check& check : checks) {
    check.member = member;
    check.stage = stage;
  }
  return checks;
}

void sort_worst_first(std::vector<Check>& checks) {
  std::stable_sort(checks.begin(), checks.end(), [](const Check& a, const Check& b) {
    return a.utilisation() > b.utilisation();
  });
}

}  // namespace deadshore::solver
