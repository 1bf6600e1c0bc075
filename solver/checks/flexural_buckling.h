#pragma once

#include "solver/checks/buckling_curve.h"
#include "solver/checks/check.h"
#include "solver/checks/safety_basis.h"
#include "solver/members/steel_member.h"

namespace deadshore::solver {

/// Axes of a section: y level (strong), z upright (weak).
enum class SectionAxis { y, z };

struct ColumnBuckling {
  double N_cr = 0.0;         ///< Euler load, N
  double slenderness = 0.0;  ///< relative
  BucklingCurve curve = BucklingCurve::a;
  double factor = 1.0;      ///< chi
  double resistance = 0.0;  ///< N
};

/// Buckling curve of a rolled section up to S420, EN 1993-1-1 Table 6.2.
[[nodiscard]] BucklingCurve column_curve(const SteelSection& section, SectionAxis axis);

/// Flexural buckling, 6.3.1, over an effective length in mm. \throws MemberError for class 4 in
/// compression, or a length that is not above 0.
[[nodiscard]] ColumnBuckling column_buckling(const SteelMember& member, SectionAxis axis,
                                             double effective_length, const SafetyBasis& basis);

/// 6.3.1 for a compression in N.
[[nodiscard]] Check check_flexural_buckling(const SteelMember& member, SectionAxis axis,
                                            double effective_length, double compression,
                                            const SafetyBasis& basis);

/// A frame against buckling as a whole, by the factor on its loads at which it buckles. 3 is the
/// least for amplified sway, EN 1993-1-1 5.2.2(5). The utilisation is least / factor.
[[nodiscard]] Check check_frame_buckling(double factor, double least = 3.0);

}  // namespace deadshore::solver
