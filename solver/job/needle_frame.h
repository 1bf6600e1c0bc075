#pragma once

#include "mesh/plane.h"
#include "solver/checks/ground_checks.h"
#include "solver/checks/timber_checks.h"
#include "solver/members/ground.h"
#include "solver/members/prop.h"
#include "solver/members/steel_member.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

/// A needle, its props and what they stand on: the wall's cross-section. N, mm. `z` runs through
/// the wall from its middle, inside positive.
namespace deadshore::solver {

/// Which side of the wall.
enum class PropSide { inside, outside };

/// What a prop does to the needle.
enum class PropAction {
  up,    ///< carries it
  down,  ///< holds its tail down, wedged between the needle and something firm above
};

/// What a prop's foot presses on.
struct Footing {
  SolePlate sole;
  Ground ground;
  double subgrade_modulus = 0.0;  ///< N/mm3: pressure per mm of settlement
  std::string suspended_floor;    ///< its name where the prop stands on one; else empty
};

/// A prop of a needle in its place.
struct NeedleProp {
  std::string mark;  ///< "inner", "outer", or the user's
  PropSide side = PropSide::inside;
  PropAction action = PropAction::up;
  double distance = 0.0;  ///< from the wall's face to the prop's middle
  double level = 0.0;  ///< of the ground under the sole above the wall's base; for a `down` prop,
                       ///< of what it is wedged against
  Prop prop;
  Footing footing;
};

/// Packing between the needle's top and the soffit.
struct Packing {
  double thickness = 0.0;  ///< 0: none
  double E = 0.0;          ///< modulus of elasticity along the load, N/mm2
  double strength = 0.0;   ///< characteristic compressive strength, N/mm2
};

/// A needle, or a head plate: of steel or of timber.
using NeedleMember = std::variant<SteelMember, TimberMember>;

/// One kind of needle with its props, used at one or more places along the wall.
struct NeedleFrame {
  std::string name;
  NeedleMember member;
  double overhang = 150.0;  ///< of the needle at each end, beyond its last prop or the wall's face
  Packing packing;
  std::vector<NeedleProp> props;

  /// Strips of the wall's thickness that bear on the needle, from the outer face inwards; the two
  /// leaves of a cavity wall. Empty: the whole thickness.
  std::vector<mesh::Interval> leaves;
};

[[nodiscard]] double depth_of(const NeedleMember& member);            ///< along the load, mm
[[nodiscard]] double width_of(const NeedleMember& member);            ///< mm, along the wall
[[nodiscard]] double weight_of(const NeedleMember& member);           ///< N/mm
[[nodiscard]] double elastic_modulus_of(const NeedleMember& member);  ///< N/mm2
[[nodiscard]] double inertia_of(const NeedleMember& member);  ///< second moment of area, mm4

/// Where a prop stands: `z` of its middle, mm, inside positive.
/// \param wall_thickness mm
[[nodiscard]] double place_of(const NeedleProp& prop, double wall_thickness);

/// Length a prop is set to: from its sole to the needle's underside (`up`), or from the needle's
/// top to what it is wedged against (`down`), mm.
/// \param soffit height of the cut's soffit, mm
[[nodiscard]] double extension_of(const NeedleFrame& frame, const NeedleProp& prop, double soffit);

/// Length of the needle, mm.
[[nodiscard]] double length_of(const NeedleFrame& frame, double wall_thickness);

/// Strips of the wall that load the needle, in z, mm: the leaves, or the whole wall.
[[nodiscard]] std::vector<mesh::Interval> loaded_strips(const NeedleFrame& frame,
                                                        double wall_thickness);

}  // namespace deadshore::solver
