#include "solver/checks/safety_basis.h"

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

}  // namespace deadshore::solver
