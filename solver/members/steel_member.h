#pragma once

#include "solver/members/steel_grade.h"
#include "solver/members/steel_section.h"

namespace deadshore::solver {

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
