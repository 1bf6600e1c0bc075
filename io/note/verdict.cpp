#include "io/note/sections.h"
#include "io/note/wording.h"
#include "solver/study/envelope.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

std::string counted(std::ptrdiff_t count, const char* one, const char* many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

bool any_loose(const solver::JobResult& result) {
  return std::ranges::any_of(result.stages, [](const solver::StageResult& stage) {
    return facts_of(stage).loose_weight > 0.0;
  });
}

/// What speaks against building it so.
std::vector<std::string> objections(const solver::JobResult& result) {
  std::vector<std::string> found;
  if (!stands(result)) found.emplace_back("the wall does not stand");
  const auto failing = std::ranges::count_if(result.checks, [](const solver::Check& check) {
    return !check.not_verified && !check.passes();
  });
  if (failing > 0) found.push_back(counted(failing, "check fails", "checks fail"));
  if (any_loose(result)) found.emplace_back("masonry is loose");
  const solver::StageResult* least = stage_of_least_factor(result);
  if (least != nullptr && !solver::is_safe_without_tension(least->safety->factor)) {
    found.emplace_back("the wall stands by tension alone");
  }
  return found;
}

}  // namespace

Html verdict_of(const solver::JobResult& result) {
  if (const std::vector<std::string> found = objections(result); !found.empty()) {
    return paragraph("Not as it is:", listed(found) + ".", "verdict alarm");
  }
  const auto open = std::ranges::count_if(result.checks, &solver::Check::not_verified);
  const auto made = static_cast<std::ptrdiff_t>(result.checks.size()) - open;
  if (made == 0) {
    return paragraph("It stands, but no member was checked.",
                     "Needles whose stiffness is given outright, their props and the ground are "
                     "for somebody else to check.",
                     "verdict warning");
  }
  const std::string passing =
      fmt::format("The wall stands in every analysis and {}.",
                  made == 1 ? "the one check that could be made passes"
                            : fmt::format("all {} checks that could be made pass", made));
  if (open > 0) {
    return paragraph(fmt::format("It holds as far as it could be checked; {} not verified.",
                                 counted(open, "check is", "checks are")),
                     passing, "verdict warning");
  }
  return paragraph("It holds by every check made here.", passing, "verdict good");
}

}  // namespace deadshore::io
