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
  double length = 0.0;
  double width = 0.0;

  [[nodiscard]] double area() const { return length * width; }
};

/// \throws MemberError unless all sizes are above 0.
[[nodiscard]] GroundContact ground_contact(const SolePlate& sole);

/// Bending of the sole along the grain as it cantilevers beyond the prop's base, under even
/// pressure over the contact; EN 1995-1-1 6.1.6.
[[nodiscard]] Check check_sole_bending(const SolePlate& sole, double load,
                                       const SafetyBasis& basis);

/// The prop's base on the sole, EN 1995-1-1 6.1.5, without spread and with k_c90 1.0.
[[nodiscard]] Check check_sole_bearing(const SolePlate& sole, double load,
                                       const SafetyBasis& basis);

/// Mean pressure on the ground against its presumed bearing, both unfactored under either safety
/// method. Not verified where nothing may be presumed.
[[nodiscard]] Check check_ground_pressure(const SolePlate& sole, const Ground& ground,
                                          double unfactored_load);

/// A prop that stands on a suspended floor: always not verified. `floor` names it.
[[nodiscard]] Check check_suspended_floor(const std::string& floor, double unfactored_load);

}  // namespace deadshore::solver
