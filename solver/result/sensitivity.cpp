#include "solver/result/sensitivity.h"

#include "solver/result/sensitivity_words.h"

#include <fmt/format.h>

#include <algorithm>

namespace deadshore::solver {

namespace {

constexpr double least_swing = 1.0;  // N; less moves nothing

}  // namespace

const char* to_string(Unsure what) {
  switch (what) {
    case Unsure::masonry_stiffness:
      return "E of the masonry";
    case Unsure::tensile_strength:
      return "tensile strength";
    case Unsure::needle_stiffness:
      return "stiffness of the needles";
    case Unsure::packing:
      return "packing";
  }
  return "";
}

const ReactionBracket* SupportSensitivity::worst() const {
  const auto swing = [this](const ReactionBracket& bracket) {
    return std::max(bracket.most - reaction, reaction - bracket.least);
  };
  const auto found = std::ranges::max_element(brackets, {}, swing);
  return found == brackets.end() || swing(*found) < least_swing ? nullptr : &*found;
}

std::string range_in_words(const Job& job, Unsure what, std::optional<NeedleId> needle) {
  if (what == Unsure::packing) {
    return fmt::format("{} mm lost in the packing of {}", packing_loss,
                       needle ? job.needles.at(index_of(*needle)).name : "one needle");
  }
  return fmt::format("{} x {} to {}", to_string(what), least_factor, greatest_factor);
}

std::string range_in_words(const Job& job, const ReactionBracket& bracket) {
  return range_in_words(job, bracket.what, bracket.needle);
}

}  // namespace deadshore::solver
