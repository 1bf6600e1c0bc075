#pragma once

namespace deadshore::solver {

/// How safety is brought in: on loads and strengths (EN 1990), or on strengths alone with
/// unfactored loads, as temporary works are often done.
enum class SafetyMethod { partial_factors, permissible };

/// What characteristic strengths are divided by. The loads that go with it are factored under
/// `partial_factors` and unfactored under `permissible`.
struct SafetyBasis {
  SafetyMethod method = SafetyMethod::partial_factors;
  double gamma_M0 = 1.0;  ///< steel sections
  double gamma_M1 = 1.0;  ///< steel where it buckles
  double gamma_timber = 1.3;
  double gamma_masonry = 3.0;

  /// Permissible stresses go with the elastic section, whatever its class.
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

}  // namespace deadshore::solver
