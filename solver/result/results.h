#pragma once

#include "mesh/wall_mesher.h"
#include "solver/job/job.h"
#include "solver/loads/take_down.h"
#include "solver/needle/needle_analysis.h"
#include "solver/needle/needle_checks.h"
#include "solver/result/sensitivity.h"
#include "solver/shoring/shore_design.h"
#include "solver/site/lift_plan.h"
#include "solver/site/monitoring.h"
#include "solver/site/removed_masonry.h"
#include "solver/spread/spread.h"
#include "solver/stages/stage_result.h"

#include <optional>
#include <string>
#include <vector>

/// What a run of a job answers. N, mm, N/mm2; tension positive; reactions positive upwards.
namespace deadshore::solver {

/// How far a needle's reaction moves when the elements are twice as large.
struct MeshEffect {
  MasonryModel model = MasonryModel::uncracked;
  double coarse_size = 0.0;  ///< mm
  std::string stage;
  std::vector<double> needle_change;  ///< (fine - coarse) / fine, in the job's order of needles
  double base_left_change = 0.0;      ///< the same of the left pier's base
  double base_right_change = 0.0;     ///< the same of the right pier's base
};

/// Hand against finite elements for one needle. Loads in N.
struct NeedleComparison {
  std::string needle;      ///< its name; in the job's order of needles
  double hand = 0.0;       ///< by the 45-degree rule
  double uncracked = 0.0;  ///< NaN where not analysed or not standing
  double cracked = 0.0;    ///< NaN where not analysed or not standing
  std::string reason;      ///< one or more sentences where any differs by over 15%; else empty
  double unyielding = not_known;  ///< uncracked, if no needle gave
};

/// How long a phase of the run took, for `--timings`.
struct PhaseTime {
  std::string phase;     ///< what was done, as printed
  double seconds = 0.0;  ///< of wall clock
};

/// A needle with its frame under the largest load that any method gives it.
struct NeedleDesign {
  NeedleId needle = {};
  NeedleDemand demand;
  NeedleAnswer answer;              ///< under that load, unfactored
  std::vector<Check> checks;        ///< its own, worst first
  std::vector<std::string> advice;  ///< plain sentences, each computed; may be empty
};

/// Everything that one run of a job finds out.
struct JobResult {
  Job job;
  mesh::WallMesh mesh;              ///< of the wall as cut; of the whole wall where it is staged
  SpreadResult hand;                ///< by the 45-degree rule
  std::vector<StageResult> stages;  ///< in the order of work; one where it is at once
  std::vector<MeshEffect> mesh_effects;      ///< one for each analysis of the stage compared
  std::vector<NeedleComparison> comparison;  ///< in the job's order of needles
  std::vector<Sensitivity> sensitivities;    ///< one for each masonry model that it was found for
  std::vector<NeedleDesign> needle_designs;  ///< of the needles that have frames, in their order
  TakeDown take_down;                        ///< of the house; empty where none is described
  std::vector<ShoreDesign> shores;           ///< of the dead shores that have frames
  std::optional<LiftPlan> lift;              ///< where the job says how the beam goes up
  RemovedMasonry removed;                    ///< what comes out, and what it weighs
  Monitoring monitoring;         ///< marks on the wall, what they should move, when to stop
  std::vector<Check> checks;     ///< of everything, worst first
  std::vector<PhaseTime> times;  ///< in the order of the phases
};

}  // namespace deadshore::solver
