#pragma once

#include "solver/checks/check.h"
#include "solver/checks/safety_basis.h"
#include "solver/members/steel_member.h"

/// Steel cross-sections bent about their level axis: EN 1993-1-1 6.2. N, Nmm; the sign of a moment
/// or force does not matter. Every function throws MemberError for a section of class 4.
namespace deadshore::solver {

/// Section modulus that resists bending, 6.2.5(2): plastic for classes 1 and 2, elastic for class 3
/// and for permissible stresses, mm3.
[[nodiscard]] double bending_modulus(const SteelMember& member, const SafetyBasis& basis);

/// Moment resistance, 6.2.5(2).
[[nodiscard]] double bending_resistance(const SteelMember& member, const SafetyBasis& basis);

/// Shear resistance, 6.2.6(2). The web must be stocky; see `check_shear`.
[[nodiscard]] double shear_resistance(const SteelMember& member, const SafetyBasis& basis);

/// Moment resistance beside a shear force, 6.2.8: above half the shear resistance the web of an I
/// section counts with (1 - rho) f_y, of other kinds the whole section does, the safe side.
[[nodiscard]] double bending_resistance_with_shear(const SteelMember& member, double shear,
                                                   const SafetyBasis& basis);

/// 6.2.5
[[nodiscard]] Check check_bending(const SteelMember& member, double moment,
                                  const SafetyBasis& basis);

/// 6.2.6; not verified where the web would buckle first (h_w/t_w > 72 epsilon, 6.2.6(6)).
[[nodiscard]] Check check_shear(const SteelMember& member, double shear, const SafetyBasis& basis);

/// 6.2.8, for a moment and a shear force at the same section.
[[nodiscard]] Check check_bending_with_shear(const SteelMember& member, double moment, double shear,
                                             const SafetyBasis& basis);

}  // namespace deadshore::solver
