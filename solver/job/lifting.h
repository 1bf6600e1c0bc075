#pragma once

#include "solver/checks/timber_checks.h"
#include "solver/job/needle_frame.h"

#include <optional>
#include <string>
#include <vector>

/// How the permanent beam goes up and what holds it meanwhile. N, mm; `at` is along the beam from
/// its left end.
namespace deadshore::solver {

/// What a lifter may lift against how far out the load's middle is from its mast or column, by
/// rising distance; a user's table, from the machine's plate.
struct ForkTable {
  /// What may be lifted at one distance.
  struct Row {
    double distance = 0.0;  ///< mm
    double load = 0.0;      ///< N
  };
  std::string source;
  std::vector<Row> rows;  ///< by rising distance
};

/// What may be lifted at a distance (mm), N, by linear interpolation.
/// \throws MemberError outside the table: nothing is guessed there.
[[nodiscard]] double lift_capacity_at(const ForkTable& table, double distance);

/// A hand-wound or powered lifter with forks.
struct Lifter {
  std::string name;
  double at = 0.0;             ///< middle of its forks
  double load_distance = 0.0;  ///< from its mast to the beam's middle plane
  double width = 0.0;          ///< of its base, along the wall
  ForkTable capacity;

  /// For tipping over its front feet, where the table does not cover it.
  struct Tipping {
    double own_weight = 0.0;
    double weight_behind = 0.0;  ///< from the front feet's edge back to its middle of weight
    double load_beyond = 0.0;    ///< from that edge out to the load's middle; below 0: within
  };
  std::optional<Tipping> tipping;
};

/// The fasteners that hold a stand together: its load goes through all of them.
struct Fixing {
  int number = 0;                  ///< of a stand
  std::optional<double> capacity;  ///< of one, given outright: a usable load, N
  /// Otherwise a smooth round nail or a screw by its effective diameter in single shear, timber to
  /// timber, EN 1995-1-1 8.2.2.
  double diameter = 0.0;
  double tensile_strength = 600.0;  ///< f_u of the wire, N/mm2
  double side_thickness = 0.0;      ///< of the timber under its head
  double penetration = 0.0;         ///< into the other timber
  bool predrilled = false;
};

/// A stand that holds the beam while it waits.
struct Stand {
  std::string name;
  double at = 0.0;     ///< its middle
  double width = 0.0;  ///< over its legs, along the wall
  double depth = 0.0;  ///< over its legs, through the wall, from the wall's middle half each way
  int legs = 2;
  TimberMember leg;
  double leg_length = 0.0;  ///< between what holds it
  Fixing fixing;
};

/// How the beam gets into its pockets.
enum class BeamEntry {
  sideways,  ///< through the wall's face: both pockets are open to that side
  endways,   ///< one end into its pocket past its place, then back into the other
};

/// How the beam goes up: where it comes from, what lifts it and what holds it meanwhile.
struct Lifting {
  PropSide side = PropSide::inside;  ///< from which the beam comes
  BeamEntry entry = BeamEntry::sideways;
  double clearance = 25.0;        ///< to have on every side, so twice in a gap, mm
  double needle_underside = 0.0;  ///< level of the needles' underside above the wall's base
  double pocket_left = 0.0;       ///< depth of the pocket into the left pier, from the jamb
  double pocket_right = 0.0;      ///< the same into the right pier
  double floor_level = 0.0;       ///< of what the lifters stand on
  double room_left = 0.0;         ///< x between which the beam can be brought to the wall
  double room_right = 0.0;
  double dynamic_factor = 1.25;  ///< on the weight while it moves
  bool one_at_a_time = true;     ///< sections of a doubled beam go up singly
  std::vector<Lifter> lifters;
  std::vector<Stand> stands;
};

}  // namespace deadshore::solver
