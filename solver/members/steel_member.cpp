#include "solver/members/steel_member.h"

#include "solver/members/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace deadshore::solver {

namespace {

/// Greatest c/t of classes 1, 2 and 3, in units of epsilon.
struct Limits {
  double class_1;
  double class_2;
  double class_3;
};

constexpr Limits outstand{9.0, 10.0, 14.0};
constexpr Limits inside_compressed{33.0, 38.0, 42.0};
constexpr Limits inside_bent{72.0, 83.0, 124.0};
constexpr Limits tube{50.0, 70.0, 90.0};  // in units of epsilon squared

int class_of(double slenderness, Limits limits) {
  if (slenderness <= limits.class_1) return 1;
  if (slenderness <= limits.class_2) return 2;
  return slenderness <= limits.class_3 ? 3 : 4;
}

int class_of_section(const SteelSection& s, double f_y, Limits web_limits) {
  const double epsilon = std::sqrt(235.0 / f_y);
  switch (s.kind) {
    case SectionKind::circular_hollow:
      return class_of(s.h / s.tw / (epsilon * epsilon), tube);
    case SectionKind::rectangular_hollow:
      return std::max(class_of((s.b - 3.0 * s.tw) / s.tw / epsilon, inside_compressed),
                      class_of((s.h - 3.0 * s.tw) / s.tw / epsilon, web_limits));
    case SectionKind::i_section:
    case SectionKind::channel:
      break;
  }
  const double c =
      s.kind == SectionKind::channel ? s.b - s.tw - s.r : 0.5 * (s.b - s.tw - 2.0 * s.r);
  const double web = s.h - 2.0 * (s.tf + s.r);
  return std::max(class_of(c / s.tf / epsilon, outstand),
                  class_of(web / s.tw / epsilon, web_limits));
}

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

int class_in_bending(const SteelSection& section, double f_y) {
  return class_of_section(section, f_y, inside_bent);
}

int class_in_compression(const SteelSection& section, double f_y) {
  return class_of_section(section, f_y, inside_compressed);
}

SteelMember steel_member(const SteelSection& section, SteelGrade grade) {
  SteelMember member{section, grade, properties_of(section), 0.0, 0, 0};
  member.f_y = yield_strength(grade, std::max(section.tw, section.tf));
  member.class_in_bending = class_in_bending(section, member.f_y);
  member.class_in_compression = class_in_compression(section, member.f_y);
  return member;
}

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
