#pragma once

#include "mesh/plane.h"
#include "solver/job/job.h"

#include <array>

namespace deadshore::solver {

/// Where the permanent beam and what it needs lie in the wall's plane, mm. Left before right.
struct BeamPlaces {
  mesh::Box beam;                      ///< from end to end, under its packing
  mesh::Interval supports;             ///< the middles of its bearings
  std::array<mesh::Box, 2> pockets;    ///< for its ends, up to the soffit, so with its packing
  std::array<mesh::Box, 2> padstones;  ///< under its ends, from the jambs into the piers
};

/// Works out where the permanent beam goes.
/// \pre job.beam
[[nodiscard]] BeamPlaces places_of_beam(const Job& job);

/// Width through the wall on which masonry, packing and padstones press on the beam: its flanges',
/// as far as the wall is as thick, mm.
/// \pre job.beam
[[nodiscard]] double pressed_width(const Job& job);

}  // namespace deadshore::solver
