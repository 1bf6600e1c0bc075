#pragma once

#include <span>

namespace deadshore::solver {

/// How safety is brought in: on loads and strengths (EN 1990), or on strengths alone with
/// unfactored loads, as temporary works are often done.
enum class SafetyMethod { partial_factors, permissible };

/// What characteristic strengths are divided by. Demands that are set against them are factored
/// under `partial_factors` and unfactored under `permissible`.
struct SafetyBasis {
  SafetyMethod method = SafetyMethod::partial_factors;
  double gamma_M0 = 1.0;       ///< steel sections
  double gamma_M1 = 1.0;       ///< steel where it buckles
  double gamma_timber = 1.3;   ///< solid timber
  double gamma_masonry = 3.0;  ///< masonry in compression

  /// Whether the elastic section modulus counts whatever the class: so with permissible stresses.
  [[nodiscard]] bool elastic() const { return method == SafetyMethod::permissible; }
};

/// Partial factors with UK values: gamma_M0 and gamma_M1 1.0 (NA to EN 1993-1-1), solid timber 1.3
/// (NA to EN 1995-1-1), masonry 3.0 (NA to EN 1996-1-1, units of category II, execution class 2).
/// From memory, unverified.
[[nodiscard]] SafetyBasis partial_factors();

/// Overall factors on unfactored loads. Steel 1.65: bending f_y / 1.65 and shear f_y / (1.65
/// sqrt 3), close to BS 449 (165 and 100 N/mm2 for today's S275; from memory, unverified). Timber
/// and masonry: 1.5 times their partial factor (common practice, no source).
[[nodiscard]] SafetyBasis permissible_stresses();

/// A variable action, in any unit, and the factor psi_0 of its combination value; UK NA to EN 1990:
/// imposed load on floors 0.7, snow below 1000 m 0.5.
struct VariableAction {
  double value = 0.0;
  double psi_0 = 0.7;
};

/// Factors of the strength combinations. Defaults: UK NA to EN 1990 Table NA.A1.2(B).
struct CombinationFactors {
  double gamma_G = 1.35;  ///< on permanent actions
  double gamma_Q = 1.5;   ///< on variable actions
  double xi = 0.925;      ///< reduces gamma_G in 6.10b
};

/// By which expression of EN 1990 6.4.3.2 actions are combined.
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
