#pragma once

#include "mesh/plane.h"
#include "solver/job/needle_frame.h"

#include <variant>
#include <vector>

/// What carries the joists inside: a head plate under them, on props or studs, on a sole plate.
/// N, mm.
namespace deadshore::solver {

/// Adjustable props under the head plate.
struct PropRow {
  Prop prop;
  double base = 120.0;         ///< side of its square plates, foot and head
  std::vector<double> places;  ///< x of each; empty: proposed from `most_apart` and the loads
  double most_apart = 0.0;     ///< 0: proposed too
};

/// A stud wall under the head plate.
struct StudRow {
  TimberMember stud;     ///< `h` across the wall of studs, `b` along it
  double spacing = 0.0;  ///< between the studs' middles
  bool nogging = false;  ///< held sideways along the row at mid-height
};

/// The shore under the joists of one floor, a row parallel to the wall.
struct ShoreFrame {
  double distance = 0.0;       ///< from the wall's inner face to the head plate's middle
  mesh::Interval x;            ///< from its first joist's side to its last, along the wall
  double joist_span = 0.0;     ///< from the wall to the joists' far bearing
  double joist_spacing = 0.0;  ///< between joists' middles
  double joist_width = 0.0;    ///< each bears on the head plate over this
  double joist_level = 0.0;    ///< of the joists' underside, above the wall's base
  double floor_level = 0.0;    ///< of what the sole stands on, above the wall's base
  NeedleMember head;           ///< the head plate; `h` upwards
  std::variant<PropRow, StudRow> uprights;
  Footing footing;  ///< `sole.length` is the length of the row; runs under all uprights
};

/// Length of a prop or stud: from the sole to the head plate's underside, mm.
[[nodiscard]] inline double upright_length(const ShoreFrame& frame) {
  return frame.joist_level - frame.floor_level - depth_of(frame.head) -
         frame.footing.sole.timber.section.h;
}

/// Whether its uprights are studs; else they are props.
[[nodiscard]] inline bool stands_on_studs(const ShoreFrame& frame) {
  return std::holds_alternative<StudRow>(frame.uprights);
}

/// Whether the places of the props are left to be proposed.
[[nodiscard]] inline bool proposes_places(const ShoreFrame& frame) {
  const auto* props = std::get_if<PropRow>(&frame.uprights);
  return props != nullptr && props->places.empty();
}

}  // namespace deadshore::solver
