#pragma once

#include "solver/model/job.h"

#include <array>

/// Where the permanent beam and its padstones lie in the wall's plane, mm.
namespace deadshore::io {

struct BeamEnds {
  double left = 0.0;  ///< middle of the bearing, along the wall
  double right = 0.0;
};
/// \pre job.beam
[[nodiscard]] BeamEnds beam_ends(const solver::Job& job);

struct Rectangle {
  mesh::Interval x;
  mesh::Interval y;
};
/// The beam from end to end, under its packing. \pre job.beam
[[nodiscard]] Rectangle beam_outline(const solver::Job& job);

/// The left and the right padstone, under the beam. \pre job.beam
[[nodiscard]] std::array<Rectangle, 2> padstone_outlines(const solver::Job& job);

}  // namespace deadshore::io
