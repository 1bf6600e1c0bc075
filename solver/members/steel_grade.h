#pragma once

namespace deadshore::solver {

/// Structural steel: EN 10025-2, hollow sections EN 10210-1.
enum class SteelGrade { s235, s275, s355 };
[[nodiscard]] const char* to_string(SteelGrade grade);

/// Modulus of elasticity and shear modulus of steel, N/mm2: EN 1993-1-1 3.2.6, with
/// G = E / (2 (1 + 0.3)).
inline constexpr double steel_E = 210000.0;
inline constexpr double steel_G = steel_E / 2.6;

/// Yield strength f_y for the thickest part of the section, N/mm2.
///
/// Values of EN 10025-2 by steps of thickness, which the UK NA to EN 1993-1-1 takes in place of the
/// coarser (and up to 16 mm equal) Table 3.1; from memory, unverified. \param thickness mm, up to
/// 100 \throws MemberError beyond.
[[nodiscard]] double yield_strength(SteelGrade grade, double thickness);

}  // namespace deadshore::solver
