#pragma once

#include "solver/members/steel_section.h"

namespace deadshore::solver {

/// Structural steel: EN 10025-2, hollow sections EN 10210-1.
enum class SteelGrade { s235, s275, s355 };
/// "S235", "S275" or "S355".
[[nodiscard]] const char* to_string(SteelGrade grade);

/// Modulus of elasticity of steel, N/mm2: EN 1993-1-1 3.2.6.
inline constexpr double steel_E = 210000.0;
/// Shear modulus of steel, N/mm2: G = E / (2 (1 + nu)) with nu 0.3, EN 1993-1-1 3.2.6.
inline constexpr double steel_G = steel_E / 2.6;

/// Yield strength f_y for the thickest part of the section, N/mm2.
///
/// Values of EN 10025-2 by steps of thickness, which the UK NA to EN 1993-1-1 takes in place of the
/// coarser (and up to 16 mm equal) Table 3.1; from memory, unverified.
/// \param thickness mm, up to 100
/// \throws MemberError for a greater thickness
[[nodiscard]] double yield_strength(SteelGrade grade, double thickness);

/// A steel section of a grade, with what every check on it needs. Made by `steel_member`.
struct SteelMember {
  SteelSection section;
  SteelGrade grade = SteelGrade::s275;
  SteelProperties properties;    ///< of the section
  double f_y = 0.0;              ///< yield strength of its thickest part, N/mm2
  int class_in_bending = 0;      ///< section class 1 to 4, about the level axis y
  int class_in_compression = 0;  ///< section class 1 to 4
};

/// Works out a member's properties, yield strength and classes.
/// \throws MemberError where the dimensions do not make a section.
[[nodiscard]] SteelMember steel_member(const SteelSection& section, SteelGrade grade);

/// Section class 1 to 4 in bending about y, EN 1993-1-1 Table 5.2: the worse of flange and web.
/// \param f_y yield strength, N/mm2
[[nodiscard]] int class_in_bending(const SteelSection& section, double f_y);
/// Section class 1 to 4 under even compression, EN 1993-1-1 Table 5.2.
/// \param f_y yield strength, N/mm2
[[nodiscard]] int class_in_compression(const SteelSection& section, double f_y);

}  // namespace deadshore::solver
