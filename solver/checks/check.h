#pragma once

#include <string>
#include <vector>

namespace deadshore::solver {

/// A demand set against a capacity, with all that someone else needs to follow it. Demand and
/// capacity are in the unit that the row is printed in, not in N and mm.
struct Check {
  std::string member;     ///< which needle, prop or sole; filled in by `labelled`
  std::string check;      ///< what is checked, such as "bending"
  std::string clause;     ///< standard and clause, or another source
  std::string working;    ///< the numbers substituted, one line
  std::string stage;      ///< stage of the work, or `hand_stage`; filled in by `labelled`
  double demand = 0.0;    ///< in `unit`
  double capacity = 0.0;  ///< in `unit`
  std::string unit;       ///< "kN", "kNm", "N/mm2", "kN/m2", "mm" or ""

  /// Something that no number here covers: somebody has to look. Never counts as passed.
  bool not_verified = false;
  std::string caution;  ///< why it is not verified, or what to mind; may be empty

  /// Demand over capacity; infinite where there is no capacity, the check is not verified, or
  /// either number is NaN.
  [[nodiscard]] double utilisation() const;

  /// Whether the utilisation is at most 1; never for a check that is not verified.
  [[nodiscard]] bool passes() const;
};

/// Stands in a stage's place for the full load by hand, whatever the stages bring. No stage of a
/// job may have this name.
inline constexpr const char* hand_stage = "hand, full load";

/// A row for a check that could not be made, with the reason; it never passes.
[[nodiscard]] Check not_verified(std::string check, std::string clause, std::string reason);

/// The same checks with the member and the stage filled in.
[[nodiscard]] std::vector<Check> labelled(std::vector<Check> checks, const std::string& member,
                                          const std::string& stage);

/// Highest utilisation first, so what is not verified leads; equals keep their order.
void sort_worst_first(std::vector<Check>& checks);

/// Units that checks are presented in, by which internal values are divided: a kN in N.
inline constexpr double kN = 1e3;
inline constexpr double kNm = 1e6;         ///< in N mm
inline constexpr double kN_per_m2 = 1e-3;  ///< in N/mm2

}  // namespace deadshore::solver
