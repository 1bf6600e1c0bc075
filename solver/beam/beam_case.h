#pragma once

#include "solver/beam/beam_checks.h"

#include <string>
#include <vector>

namespace deadshore::solver {

/// Forces in the permanent beam under characteristic loads, from one method at one stage: what is
/// checked.
struct BeamCase {
  std::string stage;   ///< `hand_stage`, or the stage's name
  std::string method;  ///< "hand", "uncracked" or "cracked"
  BeamResult answer;
};

/// The hand calculation as a case.
[[nodiscard]] BeamCase case_of(const HandBeam& hand);

/// A case for each analysis that stands of every stage that has the beam in place.
[[nodiscard]] std::vector<BeamCase> staged_cases(const JobResult& result);

/// A beam with the factors that bring characteristic loads to those which are checked. An analysis
/// does not keep dead and imposed load apart, so that one mean factor stands for both: dead and
/// imposed have the shares in it that they have of the full load by hand.
struct BeamDesign {
  const Job& job;
  double load_factor = 1.0;  ///< mean factor on characteristic loads
  double dead_factor = 1.0;  ///< on dead load alone

  [[nodiscard]] const PermanentBeam& beam() const { return *job.beam; }
};
/// Factors for the beam of a job by its rules.
/// \pre job.beam
[[nodiscard]] BeamDesign design_of(const Job& job, const HandBeam& hand);

/// Checks of the steel: bending, shear, both together, lateral-torsional buckling, web bearing at
/// both ends and deflection. Of several sections side by side each takes an even share.
[[nodiscard]] std::vector<Check> section_checks(const BeamDesign& design, const BeamCase& load);

/// Checks of what the wall stands on through its thickness: how far brickwork overhangs the
/// flanges, the plate under it where there is one, and the separators and bolts of two sections
/// side by side. With leaves on one section, its torsion is not verified.
[[nodiscard]] std::vector<Check> width_checks(const BeamDesign& design, const BeamCase& load);

/// Checks of bearing: each padstone under the beam, the pier under each padstone, and the packing
/// over the beam where the case has it.
[[nodiscard]] std::vector<Check> bearing_checks(const BeamDesign& design, const BeamCase& load);

}  // namespace deadshore::solver
