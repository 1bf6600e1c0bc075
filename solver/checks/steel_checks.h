#pragma once

#include "solver/checks/check.h"
#include "solver/checks/safety_basis.h"
#include "solver/members/steel_member.h"

#include <limits>

/// Steel cross-sections bent about their level axis: EN 1993-1-1 6.2. Forces in N, moments in N mm,
/// factored as `SafetyBasis` says; their sign does not matter. Every function throws MemberError
/// for a section of class 4.
namespace deadshore::solver {

/// Section modulus that resists bending, 6.2.5(2): plastic for classes 1 and 2, elastic for class 3
/// and for permissible stresses, mm3.
[[nodiscard]] double bending_modulus(const SteelMember& member, const SafetyBasis& basis);

/// Moment resistance M_c,Rd, 6.2.5(2), N mm.
[[nodiscard]] double bending_resistance(const SteelMember& member, const SafetyBasis& basis);

/// Shear resistance V_pl,Rd, 6.2.6(2), N. The web must be stocky; see `check_shear`.
[[nodiscard]] double shear_resistance(const SteelMember& member, const SafetyBasis& basis);

/// Moment resistance beside a shear force, 6.2.8: above half the shear resistance the web of an I
/// section counts with (1 - rho) f_y, of other kinds the whole section does, the safe side; N mm.
[[nodiscard]] double bending_resistance_with_shear(const SteelMember& member, double shear,
                                                   const SafetyBasis& basis);

/// Bending, 6.2.5.
[[nodiscard]] Check check_bending(const SteelMember& member, double moment,
                                  const SafetyBasis& basis);

/// Shear, 6.2.6; not verified where the web would buckle first (h_w/t_w > 72 epsilon, 6.2.6(6)).
[[nodiscard]] Check check_shear(const SteelMember& member, double shear, const SafetyBasis& basis);

/// Bending and shear together, 6.2.8, for a moment and a shear force at the same section.
[[nodiscard]] Check check_bending_with_shear(const SteelMember& member, double moment, double shear,
                                             const SafetyBasis& basis);

/// Limit of deflection under plaster and other brittle finish, as a part of the span: UK NA to EN
/// 1993-1-1, from memory.
inline constexpr double brittle_finish_limit = 1.0 / 360.0;
/// Limit of deflection under plain masonry, as a part of the span: TMS 402, from memory.
inline constexpr double masonry_limit = 1.0 / 600.0;

/// Deflection under unfactored loads against a part of the span.
/// \param deflection mm
/// \param span mm
/// \param limit largest deflection over span
[[nodiscard]] Check check_deflection(double deflection, double span, double limit = masonry_limit);

/// A force across an unstiffened web through one flange, such as a wall on a needle or a needle on
/// a prop, mm.
struct PatchLoad {
  double stiff_length = 0.0;  ///< s_s, on which it bears along the beam
  /// From the beam's end to the near edge of the stiff length; infinite inside the beam.
  double end_distance = std::numeric_limits<double>::infinity();
};

/// How the resistance of a web to a patch load comes about, EN 1993-1-5 6.
struct WebBearing {
  double k_F = 0.0;            ///< buckling coefficient
  double loaded_length = 0.0;  ///< effective loaded length l_y, mm
  double slenderness = 0.0;    ///< lambda-bar_F
  double factor = 1.0;         ///< reduction factor chi_F
  double resistance = 0.0;     ///< F_Rd, N
};

/// Resistance of an I section's web to a patch load, EN 1993-1-5 section 6, without stiffeners:
/// k_F 6 inside (type a) and 2 + 6 (s_s + c)/h_w <= 6 at an end (type c), l_y as the least of
/// (6.10) to (6.12). m_2 is left out where the slenderness without it is up to 0.5. The flange on
/// the other side must be held sideways.
/// \throws MemberError for another kind of section, or lengths below 0.
[[nodiscard]] WebBearing web_bearing(const SteelMember& member, const PatchLoad& patch,
                                     const SafetyBasis& basis);

/// Web bearing, EN 1993-1-5 6.2; not verified for sections other than I.
/// \param where completes the check's name, such as "under the wall"
[[nodiscard]] Check check_web_bearing(const SteelMember& member, const PatchLoad& patch,
                                      double force, const std::string& where,
                                      const SafetyBasis& basis);

/// A patch load where the beam is bent, EN 1993-1-5 7.2: eta_2 + 0.8 eta_1 <= 1.4, eta_1 with the
/// elastic modulus. Not verified for sections other than I.
[[nodiscard]] Check check_web_bearing_with_bending(const SteelMember& member,
                                                   const PatchLoad& patch, double force,
                                                   double moment, const SafetyBasis& basis);

}  // namespace deadshore::solver
