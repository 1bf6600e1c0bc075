#pragma once

#include "solver/beam/beam_checks.h"

#include <string>
#include <vector>

namespace deadshore::solver {

/// One answer for the permanent beam under characteristic loads, to be checked.
struct BeamCase {
  std::string stage;   ///< "hand, full load", or the stage's name
  std::string method;  ///< "hand", "uncracked" or "cracked"
  BeamResult answer;
};

[[nodiscard]] BeamCase case_of(const HandBeam& hand);

/// Every standing analysis of every stage that has the beam in place.
[[nodiscard]] std::vector<BeamCase> staged_cases(const JobResult& result);

/// Loads as they are checked: characteristic ones times a mean factor, in which dead and imposed
/// load have the shares of the full hand load.
struct BeamDesign {
  const Job& job;
  double load_factor = 1.0;
  double dead_factor = 1.0;

  [[nodiscard]] const PermanentBeam& beam() const { return *job.beam; }
};
[[nodiscard]] BeamDesign design_of(const Job& job, const HandBeam& hand);

/// Bending, shear, both, lateral buckling, web bearing at both ends and deflection. Each of several
/// sections side by side takes an even share.
[[nodiscard]] std::vector<Check> section_checks(const BeamDesign& design, const BeamCase& load);

/// What the wall stands on through its thickness: how far brickwork overhangs the flanges, the
/// plate under it where there is one, and the separators and bolts of two sections side by side.
/// With leaves on one section, its torsion is not verified.
[[nodiscard]] std::vector<Check> width_checks(const BeamDesign& design, const BeamCase& load);

/// Each padstone under the beam, the pier under each padstone, and the packing over the beam where
/// the case has it.
[[nodiscard]] std::vector<Check> bearing_checks(const BeamDesign& design, const BeamCase& load);

}  // namespace deadshore::solver
