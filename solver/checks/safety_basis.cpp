#include "solver/checks/safety_basis.h"

#include <algorithm>

namespace deadshore::solver {

SafetyBasis partial_factors() {
  return {};
}

SafetyBasis permissible_stresses() {
  const SafetyBasis limit_state = partial_factors();
  SafetyBasis basis;
  basis.method = SafetyMethod::permissible;
  basis.gamma_M0 = 1.65;
  basis.gamma_M1 = 1.65;
  basis.gamma_timber = 1.5 * limit_state.gamma_timber;
  basis.gamma_masonry = 1.5 * limit_state.gamma_masonry;
  return basis;
}

double combine(Combination combination, double G, std::span<const VariableAction> variable,
               const CombinationFactors& factors) {
  double in_full = 0.0;
  double combined = 0.0;         // at combination values
  double extra_of_leader = 0.0;  // what the leading one adds above its combination value
  for (const VariableAction& action : variable) {
    in_full += action.value;
    combined += action.psi_0 * action.value;
    extra_of_leader = std::max(extra_of_leader, (1.0 - action.psi_0) * action.value);
  }
  const double led = combined + extra_of_leader;
  switch (combination) {
    case Combination::eq_6_10:
      return factors.gamma_G * G + factors.gamma_Q * led;
    case Combination::eq_6_10a:
      return factors.gamma_G * G + factors.gamma_Q * combined;
    case Combination::eq_6_10b:
      return factors.xi * factors.gamma_G * G + factors.gamma_Q * led;
    case Combination::eq_6_10a_or_b:
      return std::max(combine(Combination::eq_6_10a, G, variable, factors),
                      combine(Combination::eq_6_10b, G, variable, factors));
    case Combination::unfactored:
      return G + in_full;
  }
  return 0.0;
}

}  // namespace deadshore::solver
