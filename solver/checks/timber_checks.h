#pragma once

#include "solver/checks/check.h"
#include "solver/checks/safety_basis.h"
#include "solver/members/timber.h"

#include <array>

/// Solid timber, EN 1995-1-1. N, mm, Nmm. Every function throws MemberError for a section whose
/// dimensions are not above 0.
///
/// Nails and screws that hold timber to timber, EN 1995-1-1 8. N, mm, Nmm.
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

/// 6.1.5.
/// \throws MemberError for a spread over 30 mm, or k_c90 outside 1.0 to 1.75.
[[nodiscard]] Check check_bearing_across_grain(const TimberMember& member,
                                               const GrainBearing& bearing, double force,
                                               const SafetyBasis& basis);

/// A smooth round nail, or a screw by its effective diameter, in single shear.
struct SingleShear {
  double diameter = 0.0;          ///< up to 8 mm
  double tensile_strength = 0.0;  ///< f_u of the wire, N/mm2; 600 or more by 8.3.1.1(4)
  double side_thickness = 0.0;    ///< t_1: the timber under its head
  double penetration = 0.0;       ///< t_2: into the other timber
  bool predrilled = false;
};

/// Strength with which timber resists a round nail of up to 8 mm being pressed into it, 8.3.1.1(5),
/// (8.15) and (8.16): 0.082 rho_k d^-0.3, or predrilled 0.082 (1 - 0.01 d) rho_k, N/mm2.
/// \param rho_k characteristic density, kg/m3
/// \throws MemberError for a diameter over 8 mm
[[nodiscard]] double embedment_strength(double rho_k, double diameter, bool predrilled);

/// Yield moment of a round nail, 8.3.1.1(4), (8.14): 0.3 f_u d^2.6, Nmm.
[[nodiscard]] double nail_yield_moment(double tensile_strength, double diameter);

/// Johansen's six ways in which one fastener in single shear between two timbers gives way.
struct JohansenModes {
  std::array<double, 6> resistance = {};  ///< characteristic, (8.6) a to f, N

  [[nodiscard]] char governing() const;  ///< 'a' to 'f'
  [[nodiscard]] double least() const;    ///< F_v,Rk
};

/// 8.2.2, (8.6) a to f. The rope effect is left out, the safe side.
/// \param embedment_side f_h,1,k,
/// \param embedment_point f_h,2,k, of the timbers
/// \param yield_moment M_y,Rk
[[nodiscard]] JohansenModes johansen_modes(const SingleShear& fastener, double embedment_side,
                                           double embedment_point, double yield_moment);

/// One nail between two pieces of the same timber under `force`, N. A group is not reduced (n_ef of
/// 8.3.1.1(8) is taken as n): nails in a row along the grain need staggering by a diameter, or
/// fewer count. Not verified where it reaches less than 8 d into the other timber, 8.3.1.2(2), or
/// the timbers are so thin that they must be predrilled, 8.3.1.2(6) (from memory, unverified).
/// \throws MemberError for a diameter over 8 mm or a size not above 0
[[nodiscard]] Check check_single_shear(const SingleShear& fastener, const TimberMember& timber,
                                       double force, const SafetyBasis& basis);

}  // namespace deadshore::solver
