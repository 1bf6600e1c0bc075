#pragma once

#include "solver/checks/check.h"
#include "solver/checks/safety_basis.h"
#include "solver/checks/timber_checks.h"
#include "solver/members/ground.h"

/// What props stand on. N, mm.
namespace deadshore::solver {

/// A timber sole under a prop: `timber.section.b` across the grain, `.h` thick.
struct SolePlate {
  TimberMember timber;
  double length = 0.0;       ///< along the grain, of one prop's share
  double prop_base = 120.0;  ///< side of the prop's square base plate
};

/// The part of a sole that presses on the ground: spread through its thickness 2 to 1 along the
/// grain and 1 to 1 across it (common practice), within the sole.
struct GroundContact {
  double length = 0.0;  ///< along the grain
  double width = 0.0;   ///< across it

  [[nodiscard]] double area() const { return length * width; }
};

/// Which part of a sole presses on the ground.
/// \throws MemberError unless all sizes are above 0.
[[nodiscard]] GroundContact ground_contact(const SolePlate& sole);

/// Bending of the sole along the grain as it cantilevers beyond the prop's base, under even
/// pressure over the contact; EN 1995-1-1 6.1.6.
/// \param load of the prop, N, factored as `SafetyBasis` says
[[nodiscard]] Check check_sole_bending(const SolePlate& sole, double load,
                                       const SafetyBasis& basis);

/// The prop's base on the sole, EN 1995-1-1 6.1.5: up to 30 mm of sole beyond each end of it bear
/// with it, and k_c90 is 1.25 for softwood that lies on the ground all along and reaches twice its
/// thickness beyond the base in all, else 1.0.
/// \param load of the prop, N, factored as `SafetyBasis` says
[[nodiscard]] Check check_sole_bearing(const SolePlate& sole, double load,
                                       const SafetyBasis& basis);

/// Bearing capacity factor N_q of EN 1997-1:2004 Annex D.4, by which soil beside a foundation adds
/// to its bearing resistance.
/// \param friction_angle phi', degrees, characteristic
[[nodiscard]] double overburden_factor(double friction_angle);

/// Drained bearing resistance of level ground without cohesion under a centred, rough foundation on
/// its very surface, so without overburden: 0.5 gamma B N_gamma s_gamma, EN 1997-1:2004 Annex D.4,
/// N_gamma = 2 (N_q - 1) tan phi', s_gamma = 1 - 0.3 B/L; N/mm2, without any safety factor.
/// \param width B, mm, <= length
/// \param length L, mm
/// \param gamma unit weight of the soil, N/mm3
/// \param friction_angle phi', degrees, characteristic
[[nodiscard]] double surface_bearing(double width, double length, double gamma,
                                     double friction_angle);

/// Overall factor between `surface_bearing` and what may be allowed under unfactored loads. Common
/// practice, no source.
inline constexpr double surface_bearing_factor = 3.0;

/// Mean pressure on the ground against what it may bear, both unfactored under either safety
/// method: its presumed bearing, and on sand and gravel no more than a third of `surface_bearing`
/// of the sole itself, since presumed values are for foundations about 1 m wide and as deep. Not
/// verified where nothing may be presumed, for granular ground of unknown friction, and for slabs.
/// \param unfactored_load of the prop, N
[[nodiscard]] Check check_ground_pressure(const SolePlate& sole, const Ground& ground,
                                          double unfactored_load);

/// A prop that stands on a suspended floor: a row that is never verified.
/// \param floor its name
/// \param unfactored_load of the prop, N
[[nodiscard]] Check check_suspended_floor(const std::string& floor, double unfactored_load);

}  // namespace deadshore::solver
