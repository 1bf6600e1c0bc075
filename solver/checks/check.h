#pragma once

#include <string>
#include <vector>

namespace deadshore::solver {

/// A demand set against a capacity, with all that someone else needs to follow it.
struct Check {
  std::string member;  ///< which needle, prop or sole; see `labelled`
  std::string check;   ///< what is checked, such as "bending"
  std::string clause;
  std::string working;  ///< the numbers substituted, one line
  std::string stage;    ///< see `labelled`
  double demand = 0.0;
  double capacity = 0.0;
  std::string unit;  ///< of demand and capacity: "kN", "kNm", "N/mm2", "kN/m2", "mm" or ""

  /// Something that no number here covers: somebody has to look. Never counts as passed.
  bool not_verified = false;
  std::string caution;  ///< why it is not verified, or what to mind; may be empty

  /// Demand over capacity; infinite where there is no capacity or the check is not verified.
  [[nodiscard]] double utilisation() const;

  [[nodiscard]] bool passes() const;
};

/// In a stage's place: the full load by hand, whatever the stages bring. No stage may be called so.
inline constexpr const char* hand_stage = "hand, full load";

/// A check that could not be made, with the reason.
[[nodiscard]] Check not_verified(std::string check, std::string clause, std::string reason);

/// The same checks for a named member at a stage.
[[nodiscard]] std::vector<Check> labelled(std::vector<Check> checks, const std::string& member,
                                          const std::string& stage);

/// Highest utilisation first, so what is not verified leads; equals keep their order.
void sort_worst_first(std::vector<Check>& checks);

/// The units that checks are presented in, as multiples of N and mm.
inline constexpr double kN = 1e3;
inline constexpr double kNm = 1e6;
inline constexpr double kN_per_m2 = 1e-3;

}  // namespace deadshore::solver
