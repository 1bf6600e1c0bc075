#pragma once

#include <span>

namespace deadshore::solver {

/// A variable action, in any unit, and the factor of its combination value. psi_0, UK NA to EN
/// 1990: imposed load on floors 0.7, snow below 1000 m 0.5.
struct VariableAction {
  double value = 0.0;
  double psi_0 = 0.7;
};

/// Factors of the strength combinations. Defaults: UK NA to EN 1990 Table NA.A1.2(B).
struct CombinationFactors {
  double gamma_G = 1.35;
  double gamma_Q = 1.5;
  double xi = 0.925;  ///< reduces gamma_G in 6.10b
};

enum class Combination {
  eq_6_10,        ///< the default: never below the next
  eq_6_10a_or_b,  ///< the larger of 6.10a and 6.10b
  eq_6_10a,
  eq_6_10b,
  unfactored,  ///< everything in full, for permissible stresses, props and ground
};

/// Permanent action `G` with the variable actions, EN 1990 6.4.3.2: in 6.10 and 6.10b each
/// variable action leads in turn, and the largest sum counts. All actions unfavourable, >= 0.
[[nodiscard]] double combine(Combination combination, double G,
                             std::span<const VariableAction> variable,
                             const CombinationFactors& factors = {});

}  // namespace deadshore::solver
