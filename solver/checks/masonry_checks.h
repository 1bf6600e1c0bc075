#pragma once

#include "solver/checks/check.h"
#include "solver/checks/safety_basis.h"

/// Masonry, EN 1996-1-1. N, mm, N/mm2.
namespace deadshore::solver {

/// What masonry is built of, for its strength from units and mortar.
struct MasonryUnits {
  double K = 0.50;   ///< clay units of group 1 in general purpose mortar: UK NA; 0.55 recommended
  double f_b = 0.0;  ///< normalised mean compressive strength of the units, N/mm2
  double f_m = 0.0;  ///< compressive strength of the mortar, N/mm2
  bool longitudinal_joint = false;  ///< as in a bonded wall one brick thick or more
};

/// Characteristic compressive strength f_k = K f_b^0.7 f_m^0.3, 3.6.1.2, with f_b <= 75, f_m <= 20
/// and f_m <= 2 f_b, x 0.8 with a longitudinal joint; N/mm2.
/// \throws MemberError unless K, f_b and f_m are above 0.
[[nodiscard]] double masonry_strength(const MasonryUnits& units);

/// A force on part of a wall: a pad under a beam, or a needle under the masonry above it (then
/// `height` is the masonry above the bearing). The units are solid (group 1). All in mm.
struct ConcentratedLoad {
  double bearing_length = 0.0;  ///< along the wall
  double bearing_depth = 0.0;   ///< through the wall, <= thickness
  double thickness = 0.0;       ///< of the wall
  double near_end = 0.0;        ///< a_1: from the bearing to the nearer end of the wall
  double far_end = 0.0;         ///< to the other end, or to where the next load's share begins
  double height = 0.0;          ///< h_c: of the wall to the level of the load
  double eccentricity = 0.0;    ///< through the wall
};

/// How the resistance under a `ConcentratedLoad` comes about.
struct ConcentratedResistance {
  double spread_length = 0.0;  ///< l_efm, mm: along the wall at half height, spread at 60 degrees
  double enhancement = 1.0;    ///< factor beta on the strength
  double resistance = 0.0;     ///< N_Rdc, N
};

/// Resistance under a concentrated load, 6.1.3: N_Rdc = beta A_b f_d, beta = (1 + 0.3 a_1/h_c)
/// (1.5 - 1.1 A_b/A_ef) between 1 and min(1.25 + a_1/(2 h_c), 1.5), A_b/A_ef <= 0.45.
/// \param f_k characteristic compressive strength, N/mm2
/// \throws MemberError where the dimensions do not make sense.
[[nodiscard]] ConcentratedResistance concentrated_resistance(const ConcentratedLoad& load,
                                                             double f_k, const SafetyBasis& basis);

/// Bearing under a concentrated load, 6.1.3. Not verified where that clause does not hold, with an
/// eccentricity over t/4 or a bearing under 90 mm, unless it fails even without enhancement.
/// \param force N, factored as `SafetyBasis` says
/// \param f_k characteristic compressive strength, N/mm2
[[nodiscard]] Check check_concentrated_load(const ConcentratedLoad& load, double force, double f_k,
                                            const SafetyBasis& basis);

/// A stretch of wall under vertical load at one level. N, mm.
struct LoadedWall {
  double length = 0.0;     ///< along the wall
  double thickness = 0.0;  ///< through it
  double height = 0.0;     ///< h_ef: effective height, 5.5.1.2
  double along = 0.0;      ///< eccentricity of the load along the wall, from its middle
  double through = 0.0;    ///< eccentricity of the load at its top, through the wall
};

/// How the resistance of `LoadedWall` comes about.
struct WallResistance {
  double compressed = 0.0;   ///< length - 2 |along|, mm: the part with the load at its middle
  double area_factor = 1.0;  ///< 0.7 + 3 A below 0.1 m2, 6.1.2.1(3)
  double ends = 1.0;         ///< Phi_i at top and foot, 6.1.2.2(1)(i)
  double middle = 1.0;       ///< Phi_m at mid-height, 6.1.2.2(1)(ii) and Annex G, E = 1000 f_k
  double slenderness = 0.0;  ///< h_ef / t
  double resistance = 0.0;   ///< N
};

/// EN 1996-1-1:2005 6.1.2: N_Rd = Phi t l f_d, Phi the lesser of ends and middle. Eccentricities
/// through the wall have h_ef / 450 added (5.5.1.1(4)) and are at least 0.05 t; half of that at the
/// top counts at mid-height. Along the wall a block of stress in equilibrium with the load, since
/// no tension counts.
/// \param f_k characteristic compressive strength, N/mm2
/// \throws MemberError unless length, thickness, height and f_k are above 0.
[[nodiscard]] WallResistance wall_resistance(const LoadedWall& wall, double f_k,
                                             const SafetyBasis& basis);

/// A wall under vertical load, 6.1.2.1; it also fails where h_ef / t is over 27 (5.5.1.4(2)).
/// \param force N, factored as `SafetyBasis` says
/// \param f_k characteristic compressive strength, N/mm2
[[nodiscard]] Check check_loaded_wall(const LoadedWall& wall, double force, double f_k,
                                      const SafetyBasis& basis);

}  // namespace deadshore::solver
