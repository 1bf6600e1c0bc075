#pragma once

#include "solver/checks/check.h"
#include "solver/checks/safety_basis.h"
#include "solver/members/steel_member.h"

namespace deadshore::solver {

/// Buckling curves of EN 1993-1-1 Table 6.1.
enum class BucklingCurve { a0, a, b, c, d };
/// "a0", "a", "b", "c" or "d".
[[nodiscard]] const char* to_string(BucklingCurve curve);

/// Imperfection factor alpha, EN 1993-1-1 Table 6.1: 0.13, 0.21, 0.34, 0.49, 0.76.
[[nodiscard]] double imperfection_factor(BucklingCurve curve);

/// Reduction factor chi of a compressed member, EN 1993-1-1 6.3.1.2; 1 up to a slenderness of 0.2.
/// \param slenderness relative slenderness lambda-bar, sqrt(A f_y / N_cr)
[[nodiscard]] double buckling_factor(double slenderness, BucklingCurve curve);

/// Axes of a section: y level (strong), z upright (weak).
enum class SectionAxis { y, z };

/// How the buckling resistance of a column comes about, EN 1993-1-1 6.3.1.
struct ColumnBuckling {
  double N_cr = 0.0;                       ///< elastic critical force (Euler), N
  double slenderness = 0.0;                ///< relative slenderness lambda-bar
  BucklingCurve curve = BucklingCurve::a;  ///< by Table 6.2
  double factor = 1.0;                     ///< reduction factor chi
  double resistance = 0.0;                 ///< N_b,Rd, N
};

/// Buckling curve of a rolled section up to S420, EN 1993-1-1 Table 6.2.
[[nodiscard]] BucklingCurve column_curve(const SteelSection& section, SectionAxis axis);

/// Flexural buckling about an axis, EN 1993-1-1 6.3.1.
/// \param effective_length mm
/// \throws MemberError for class 4 in compression, or a length that is not above 0.
[[nodiscard]] ColumnBuckling column_buckling(const SteelMember& member, SectionAxis axis,
                                             double effective_length, const SafetyBasis& basis);

/// Flexural buckling, EN 1993-1-1 6.3.1:
/// \code
/// const SteelSection section{"UC 152x152x23", SectionKind::i_section, 152.4,
/// 152.2, 5.8, 6.8, 7.6}; const SteelMember column = steel_member(section, SteelGrade::s275); const
/// Check check =
///     check_flexural_buckling(column, SectionAxis::z, 3000.0, 200e3, partial_factors());
/// fmt::print("{}: {:.0f} of {:.0f} {}, {:.2f}, {}\n", check.check, check.demand, check.capacity,
///            check.unit, check.utilisation(), check.passes() ? "passes" : "fails");
/// \endcode
/// \param effective_length mm
/// \param compression N, factored as `SafetyBasis` says
/// \throws MemberError like `column_buckling`
[[nodiscard]] Check check_flexural_buckling(const SteelMember& member, SectionAxis axis,
                                            double effective_length, double compression,
                                            const SafetyBasis& basis);

/// A frame against buckling as a whole. The utilisation is least / factor.
/// \param factor alpha_cr, on all loads, at which the frame buckles
/// \param least that passes: 3 is the least for amplified sway, EN 1993-1-1 5.2.2(5)
[[nodiscard]] Check check_frame_buckling(double factor, double least = 3.0);

/// A length of beam between points that are held sideways and against twisting, and how its moments
/// and loads lie. The defaults are a uniform moment: the safe side but for loads above the shear
/// centre.
struct LateralSpan {
  double length = 0.0;  ///< mm
  double k_z = 1.0;     ///< effective length factor for rotation on plan
  double k_w = 1.0;     ///< for warping
  double C_1 = 1.0;     ///< shape of the moment diagram
  double C_2 = 0.0;     ///< goes with z_g
  double z_g = 0.0;     ///< height of the load above the shear centre, mm; > 0 destabilises
};

/// Elastic critical moment M_cr of a doubly symmetric section, N mm:
/// C_1 N_z { sqrt[(k_z/k_w)^2 I_w/I_z + G I_t/N_z + (C_2 z_g)^2] - C_2 z_g } with
/// N_z = pi^2 E I_z / (k_z L)^2; SN003 and ENV 1993-1-1 annex F. A channel is treated alike, which
/// holds only where it is loaded through its shear centre.
[[nodiscard]] double critical_moment(const SteelMember& member, const LateralSpan& span);

/// Which curves bring the critical moment to a resistance.
enum class LateralCurves {
  rolled,   ///< EN 1993-1-1 6.3.2.3 with UK values; the default
  general,  ///< 6.3.2.2: lower
};

/// How the resistance to lateral-torsional buckling comes about.
struct LateralBuckling {
  double M_cr = 0.0;                       ///< elastic critical moment, N mm
  double slenderness = 0.0;                ///< relative slenderness lambda-bar_LT
  BucklingCurve curve = BucklingCurve::a;  ///< that applies
  double phi = 0.0;                        ///< Phi_LT of the curve's formula
  double factor = 1.0;                     ///< reduction factor chi_LT
  double resistance = 0.0;                 ///< M_b,Rd, N mm
};

/// Lateral-torsional buckling about the strong axis.
///
/// `rolled`: lambda_LT,0 0.4, beta 0.75 (NA.2.17 and EN), curve b up to h/b 2, c up to 3.1, d
/// above and for channels (UK NA; from memory, unverified); the factor f is left at 1, the safe
/// side. `general`: plateau 0.2, Table 6.4. Hollow sections, if not over twice as deep as wide, are
/// taken as free of it.
/// \throws MemberError for class 4, or a length that is not above 0.
[[nodiscard]] LateralBuckling lateral_buckling(const SteelMember& member, const LateralSpan& span,
                                               const SafetyBasis& basis,
                                               LateralCurves curves = LateralCurves::rolled);

/// Lateral-torsional buckling, EN 1993-1-1 6.3.2.1.
/// \param moment largest in the span, N mm; its sign does not matter
/// \throws MemberError like `lateral_buckling`
[[nodiscard]] Check check_lateral_buckling(const SteelMember& member, const LateralSpan& span,
                                           double moment, const SafetyBasis& basis,
                                           LateralCurves curves = LateralCurves::rolled);

}  // namespace deadshore::solver
