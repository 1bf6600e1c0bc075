#pragma once

#include "solver/checks/check.h"
#include "solver/job/job.h"
#include "solver/result/results.h"

#include <vector>

namespace deadshore::solver {

/// The permanent beam as a simple beam under everything above it, without any arching: masonry over
/// the cut up to the wall's top less openings, lintels, and all line and point loads over it.
struct HandBeam {
  double span = 0.0;                  ///< between the middles of its bearings, mm
  double load = 0.0;                  ///< all of it, its own weight included, N, characteristic
  double dead = 0.0;                  ///< the permanent part of it, N
  double reaction_left = 0.0;         ///< upwards on it, N
  double reaction_right = 0.0;        ///< upwards on it, N
  double largest_moment = 0.0;        ///< N mm
  double largest_shear = 0.0;         ///< N
  double deflection = 0.0;            ///< largest, by bending and shear, mm
  std::vector<BeamStation> stations;  ///< from left to right
};

/// Works out the permanent beam by hand.
/// \pre job.beam
[[nodiscard]] HandBeam hand_beam(const Job& job);

/// Every check of the permanent beam, its padstones and the masonry under them, and its packing:
/// once under the full hand load, and once under the worst of what the staged analyses give it,
/// each with its stage ("hand, full load" for the first). Relief by arching never passes a beam:
/// both rows are given. Worst first. Empty without a beam.
/// \pre result.job, result.stages filled in
[[nodiscard]] std::vector<Check> check_beam(const JobResult& result);

}  // namespace deadshore::solver
