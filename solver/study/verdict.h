#pragma once

#include "solver/result/results.h"

#include <optional>
#include <string>
#include <vector>

namespace deadshore::solver {

/// What may be said of a job as it is, worked out once for terminal, note, sheet and JSON. It is
/// never a permission: an engineer decides whether it may be built.
struct Verdict {
  bool stands = true;             ///< in every analysis of every stage
  bool by_tension_alone = false;  ///< some stage is not shown to stand without tension
  std::vector<std::string> no_factor;  ///< stages whose factor without tension was not found
  double loose_weight = 0.0;      ///< most of any stage, N
  double load_on_nothing = 0.0;   ///< by hand, N: must be none
  std::vector<Check> fails;       ///< worst first
  std::vector<Check> not_verified;

  /// The strength check that is used most, passing or not; clearances and lengths in mm are none.
  std::optional<Check> governs;

  /// Most that any mark on the wall moves from the first stage on, mm, down positive; NaN where
  /// that is not known.
  double movement_since_start = not_known;

  std::size_t made = 0;  ///< checks that could be made

  /// Whether nothing here stops it.
  [[nodiscard]] bool nothing_fails() const;

  /// The same, and nothing is left that nobody has looked at: what `--strict` asks.
  [[nodiscard]] bool holds() const { return nothing_fails() && not_verified.empty(); }
};

[[nodiscard]] Verdict verdict_of(const JobResult& result);

/// What speaks against building it so, in short phrases: "the wall does not stand", "2 checks
/// fail". Empty where `nothing_fails`.
[[nodiscard]] std::vector<std::string> objections(const Verdict& verdict);

/// What may be said at most.
inline constexpr const char* at_most =
    "No check made here fails; an engineer decides whether it may be built.";

}  // namespace deadshore::solver
