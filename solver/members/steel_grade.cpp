#include "solver/members/steel_grade.h"

#include "solver/members/error.h"

#include <fmt/format.h>

#include <array>

namespace deadshore::solver {

namespace {

/// f_y up to a thickness.
struct Step {
  double thickness;
  double S235;
  double S275;
  double S355;
};

constexpr std::array<Step, 5> steps{{{16.0, 235.0, 275.0, 355.0},
                                     {40.0, 225.0, 265.0, 345.0},
                                     {63.0, 215.0, 255.0, 335.0},
                                     {80.0, 215.0, 245.0, 325.0},
                                     {100.0, 215.0, 235.0, 315.0}}};

}  // namespace

const char* to_string(SteelGrade grade) {
  switch (grade) {
    case SteelGrade::s235:
      return "S235";
    case SteelGrade::s275:
      return "S275";
    case SteelGrade::s355:
      return "S355";
  }
  return "";
}

double yield_strength(SteelGrade grade, double thickness) {
  if (thickness > 0.0) {
    for (const Step& step : steps) {
      if (thickness > step.thickness) continue;
      if (grade == SteelGrade::s235) return step.S235;
      return grade == SteelGrade::s275 ? step.S275 : step.S355;
    }
  }
  throw MemberError(to_string(grade), fmt::format("a part {} mm thick", thickness),
                    "up to 100 mm is due");
}

}  // namespace deadshore::solver
