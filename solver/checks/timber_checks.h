#pragma once

#include "solver/checks/check.h"
#include "solver/checks/safety_basis.h"
#include "solver/members/timber.h"

#include <array>

/// Solid timber, and the nails and screws that hold timber to timber: EN 1995-1-1, whose clauses
/// are named below. Forces in N, lengths in mm, moments in N mm, factored as `SafetyBasis` says;
/// their sign does not matter. Every function throws MemberError for a section whose dimensions are
/// not above 0.
namespace deadshore::solver {

/// A piece of timber with what its strength depends on.
struct TimberMember {
  TimberSection section;
  TimberClass strength_class;
  LoadDuration duration = LoadDuration::medium_term;  ///< of the shortest load on it
  ServiceClass service = ServiceClass::two;
};

/// Design value of a characteristic strength of the member's class: k_mod f_k / gamma, 2.4.1(1),
/// N/mm2. The depth factor k_h for small sections is left out, the safe side.
[[nodiscard]] double usable_strength(const TimberMember& member, double characteristic,
                                     const SafetyBasis& basis);

/// Factor k_cr: the part of a section's width that carries shear once it has split, 6.1.7(2).
inline constexpr double crack_factor = 0.67;

/// Buckling of a compressed timber member in one direction, 6.3.2.
struct TimberBuckling {
  double slenderness = 0.0;           ///< lambda: effective length over radius of gyration
  double relative_slenderness = 0.0;  ///< lambda_rel
  double factor = 1.0;                ///< k_c, on the strength in compression along the grain
};

/// Reduction of compressive strength by buckling, 6.3.2 with beta_c 0.2.
/// \param depth of the section in the direction in which it bends: `h` (y) or `b` (z), mm
/// \param effective_length mm
[[nodiscard]] TimberBuckling timber_buckling(const TimberClass& strength_class, double depth,
                                             double effective_length);

/// Factor k_crit by which bending strength is reduced between sideways restraints, 6.3.3.
/// \param effective_length l_ef, mm; 0 where held throughout, which gives 1
[[nodiscard]] double timber_lateral_factor(const TimberMember& member, double effective_length);

/// Bending along `h`, 6.1.6.
/// \param lateral_factor k_crit of 6.3.3, see `timber_lateral_factor`
[[nodiscard]] Check check_timber_bending(const TimberMember& member, double moment,
                                         const SafetyBasis& basis, double lateral_factor = 1.0);

/// Shear, 6.1.7.
[[nodiscard]] Check check_timber_shear(const TimberMember& member, double shear,
                                       const SafetyBasis& basis);

/// Compression along the grain with buckling, 6.3.2.
/// \param length_along_h effective length over which it may bend along `h`; 0 where held throughout
/// \param length_along_b likewise along `b`
[[nodiscard]] Check check_timber_compression(const TimberMember& member, double compression,
                                             double length_along_h, double length_along_b,
                                             const SafetyBasis& basis);

/// A contact across the grain, 6.1.5.
struct GrainBearing {
  double length = 0.0;       ///< along the grain
  double width = 0.0;        ///< across it
  double spread_each = 0.0;  ///< added to the length at each end, 0 to 30 mm, 6.1.5(1)
  /// 1.0; or on softwood with l_1 >= 2 h: 1.25 on a continuous support, 1.5 on single ones.
  double k_c90 = 1.0;
};

/// Compression across the grain, 6.1.5.
/// \throws MemberError for a spread over 30 mm, or k_c90 outside 1.0 to 1.75.
[[nodiscard]] Check check_bearing_across_grain(const TimberMember& member,
                                               const GrainBearing& bearing, double force,
                                               const SafetyBasis& basis);

/// A smooth round nail, or a screw by its effective diameter, in single shear.
struct SingleShear {
  double diameter = 0.0;          ///< d, up to 8 mm
  double tensile_strength = 0.0;  ///< f_u of the wire, N/mm2; 600 or more by 8.3.1.1(4)
  double side_thickness = 0.0;    ///< t_1: the timber under its head
  double penetration = 0.0;       ///< t_2: into the other timber
  bool predrilled = false;        ///< has a hole drilled for it
};

/// Characteristic embedment strength f_h,k of timber under a round nail of up to 8 mm, 8.3.1.1(5),
/// (8.15) and (8.16): 0.082 rho_k d^-0.3, or predrilled 0.082 (1 - 0.01 d) rho_k, N/mm2.
/// \param rho_k characteristic density, kg/m3
/// \param diameter d, mm
/// \throws MemberError for a diameter over 8 mm
[[nodiscard]] double embedment_strength(double rho_k, double diameter, bool predrilled);

/// Characteristic yield moment M_y,Rk of a round nail, 8.3.1.1(4), (8.14): 0.3 f_u d^2.6, N mm.
[[nodiscard]] double nail_yield_moment(double tensile_strength, double diameter);

/// Resistances of Johansen's six failure modes of one fastener in single shear between two timbers.
struct JohansenModes {
  std::array<double, 6> resistance = {};  ///< characteristic, (8.6) a to f, N

  [[nodiscard]] char governing() const;  ///< mode of the least resistance, 'a' to 'f'
  [[nodiscard]] double least() const;    ///< F_v,Rk, N
};

/// Johansen's failure modes of a fastener, 8.2.2, (8.6) a to f. The rope effect is left out, the
/// safe side.
/// \param embedment_side f_h,1,k of the timber under the head, N/mm2
/// \param embedment_point f_h,2,k of the other timber, N/mm2
/// \param yield_moment M_y,Rk, N mm
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
