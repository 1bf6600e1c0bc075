#pragma once

#include "solver/members/steel_section.h"

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
/// coarser (and up to 16 mm equal) Table 3.1; from memory, unverified.
/// \param thickness mm, up to 100
/// \throws MemberError beyond.
[[nodiscard]] double yield_strength(SteelGrade grade, double thickness);

/// A steel section of a grade, with what every check on it needs.
struct SteelMember {
  SteelSection section;
  SteelGrade grade = SteelGrade::s275;
  SteelProperties properties;
  double f_y = 0.0;          ///< N/mm2, for its thickest part
  int class_in_bending = 0;  ///< 1 to 4, about the level axis y
  int class_in_compression = 0;
};

/// \throws MemberError where the dimensions do not make a section.
[[nodiscard]] SteelMember steel_member(const SteelSection& section, SteelGrade grade);

/// Section class 1 to 4 by EN 1993-1-1 Table 5.2: the worse of flange and web.
[[nodiscard]] int class_in_bending(const SteelSection& section, double f_y);
[[nodiscard]] int class_in_compression(const SteelSection& section, double f_y);

}  // namespace deadshore::solver
