#include "solver/shoring/shore_spacing.h"

#include <algorithm>
#include <limits>
#include <variant>
#include <vector>

namespace deadshore::solver {

namespace {

constexpr double least_spacing = 300.0;  // mm

/// Spacings from the widest down, those left out that place as many props as the one before.
std::vector<double> trials(const ShoreCase& asked) {
  const auto& props = std::get<PropRow>(asked.shore.frame->uprights);
  const double least = std::max(least_spacing, props.base);
  std::vector<double> spacings;
  std::size_t before = 0;
  for (double spacing = widest_spacing; spacing >= least; spacing -= spacing_step) {
    const std::size_t count = plain_row(asked.shore, spacing).size();
    if (count == before) continue;
    before = count;
    spacings.push_back(spacing);
  }
  return spacings;
}

}  // namespace

ShoreAnswer answer_at(const ShoreCase& asked, double most_apart) {
  return work_out(asked.shore, uprights_of(asked.shore, asked.loads, most_apart), asked.loads,
                  asked.rules, {});
}

SpacingFound find_spacing(const ShoreCase& asked) {
  SpacingFound found;
  double least = std::numeric_limits<double>::infinity();
  for (const double spacing : trials(asked)) {
    const ShoreAnswer answer = answer_at(asked, spacing);
    const Check* worst = worst_by_numbers(answer.checks);
    if (worst == nullptr) continue;
    if (worst->utilisation() < least) {
      least = worst->utilisation();
      found.used = spacing;
    }
    if (worst->passes()) {
      found.largest = spacing;
      break;
    }
    found.failing = spacing;
    found.fails = *worst;
  }
  const double given = std::get<PropRow>(asked.shore.frame->uprights).most_apart;
  if (given > 0.0) found.used = given;
  if (!(found.used > 0.0)) found.used = widest_spacing;
  return found;
}

}  // namespace deadshore::solver
