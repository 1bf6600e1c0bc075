#pragma once

#include "solver/checks/check.h"
#include "solver/checks/safety_basis.h"
#include "solver/checks/timber_checks.h"

#include <array>

/// Nails and screws that hold timber to timber, EN 1995-1-1 8. N, mm, Nmm.
namespace deadshore::solver {

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
/// \param rho_k characteristic density, kg/m3 \throws MemberError for a diameter over 8 mm
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
/// \param embedment_side f_h,1,k, \param embedment_point f_h,2,k, of the timbers
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
