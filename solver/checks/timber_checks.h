#pragma once

#include "solver/checks/check.h"
#include "solver/checks/safety_basis.h"
#include "solver/members/timber.h"

/// Solid timber, EN 1995-1-1. N, mm, Nmm. Every function throws MemberError for a section whose
/// dimensions are not above 0.
namespace deadshore::solver {

/// A piece of timber with what its strength depends on.
struct TimberMember {
  TimberSection section;
  TimberClass strength_class;
  LoadDuration duration = LoadDuration::medium_term;  ///< of the shortest load on it
  ServiceClass service = ServiceClass::two;
};

/// A characteristic strength of the class as it may be used: k_mod f_k / gamma, 2.4.1(1). The depth
/// factor k_h for small sections is left out, the safe side.
[[nodiscard]] double usable_strength(const TimberMember& member, double characteristic,
                                     const SafetyBasis& basis);

/// Part of a split section's width that carries shear, 6.1.7(2).
inline constexpr double crack_factor = 0.67;

/// Factor k_c by which compression along the grain is reduced over a buckling length, along `h`
/// (y) or `b` (z); 6.3.2, beta_c 0.2.
struct TimberBuckling {
  double slenderness = 0.0;           ///< lambda
  double relative_slenderness = 0.0;  ///< lambda_rel
  double factor = 1.0;                ///< k_c
};
[[nodiscard]] TimberBuckling timber_buckling(const TimberClass& strength_class, double depth,
                                             double effective_length);

/// Factor k_crit by which bending strength is reduced between sideways restraints, 6.3.3.
[[nodiscard]] double timber_lateral_factor(const TimberMember& member, double effective_length);

/// 6.1.6 and, through `lateral_factor`, 6.3.3. Bent along `h`.
[[nodiscard]] Check check_timber_bending(const TimberMember& member, double moment,
                                         const SafetyBasis& basis, double lateral_factor = 1.0);

/// 6.1.7
[[nodiscard]] Check check_timber_shear(const TimberMember& member, double shear,
                                       const SafetyBasis& basis);

/// 6.3.2 with the buckling lengths over which it may bend along `h` and along `b`; 0 where it is
/// held throughout.
[[nodiscard]] Check check_timber_compression(const TimberMember& member, double compression,
                                             double length_along_h, double length_along_b,
                                             const SafetyBasis& basis);

/// A contact across the grain, 6.1.5.
struct GrainBearing {
  double length = 0.0;       ///< along the grain
  double width = 0.0;        ///< across it
  double spread_each = 0.0;  ///< added to the length at each end, 0 to 30 mm
  /// 1.0; or on softwood with l_1 >= 2 h: 1.25 on a continuous support, 1.5 on single ones.
  double k_c90 = 1.0;
};

/// 6.1.5. \throws MemberError for a spread over 30 mm, or k_c90 outside 1.0 to 1.75.
[[nodiscard]] Check check_bearing_across_grain(const TimberMember& member,
                                               const GrainBearing& bearing, double force,
                                               const SafetyBasis& basis);

}  // namespace deadshore::solver
