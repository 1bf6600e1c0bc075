#pragma once

#include "mesh/plane.h"
#include "solver/job/ids.h"

#include <string>
#include <vector>

namespace deadshore::solver {

struct Job;

/// One course within the cut, from its underside to its top, less openings and lintels.
struct RemovedCourse {
  mesh::Interval y;
  double area = 0.0;    ///< of masonry, mm2
  double weight = 0.0;  ///< N
};

/// One strip within the cut, full height of it.
struct RemovedStrip {
  mesh::Interval x;
  double area = 0.0;
  double weight = 0.0;
};

/// A lintel that goes with the cut.
struct RemovedLintel {
  LintelId lintel = {};
  std::string name;  ///< for printing
  double length = 0.0;
  double weight = 0.0;
  int pieces = 1;  ///< least number that two people lift
  double piece_weight = 0.0;
  bool one_person = false;  ///< whether one person lifts a piece
};

/// What comes out of the wall and has to be carried away: the cut, and the pockets of the beam.
struct RemovedMasonry {
  std::vector<RemovedCourse> courses;  ///< from the top down, as they come out
  std::vector<RemovedStrip> strips;    ///< from left to right
  std::vector<RemovedLintel> lintels;
  double pockets_weight = 0.0;  ///< N, what padstones and beam ends replace
  double weight = 0.0;          ///< N, everything
  double solid_volume = 0.0;    ///< mm3, everything
  double loose_volume = 0.0;    ///< mm3
};

[[nodiscard]] RemovedMasonry removed_masonry(const Job& job);

}  // namespace deadshore::solver
