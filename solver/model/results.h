#pragma once

#include "mesh/wall_mesher.h"
#include "solver/model/job.h"
#include "solver/model/plane_tensor.h"
#include "solver/needle/needle_analysis.h"
#include "solver/needle/needle_checks.h"
#include "solver/spread/spread.h"

#include <limits>
#include <string>
#include <vector>

/// What the analyses answer. N, mm, N/mm2; tension positive; reactions positive upwards.
namespace deadshore::solver {

/// Fields over the mesh of one analysis.
struct PanelFields {
  std::vector<double> displacement;            ///< ux, uy of each node, mm
  std::vector<PlaneTensor> node_stress;        ///< smoothed at nodes, for drawing
  std::vector<PlaneTensor> quad_stress;        ///< mean over each quadrilateral
  std::vector<PlaneTensor> quad_crack_strain;  ///< mean strain taken by open cracks
  std::vector<char> quad_loose;                ///< 1 where the masonry hangs on nothing real
};

struct NeedleReaction {
  std::string name;
  double x = 0.0;           ///< mm
  double force = 0.0;       ///< N, >= 0
  double settlement = 0.0;  ///< mean downward movement of the soffit over the bearing, mm
  double contact = 0.0;     ///< part of the bearing in contact, 0 to 1
};

/// Masonry that has no safe state under the cracked law: it hangs on the residual stiffness alone
/// and would fall. One connected patch.
struct LoosePatch {
  double weight = 0.0;  ///< N
  double area = 0.0;    ///< mm2
  mesh::Interval x;
  mesh::Interval y;
  std::string where;  ///< plain words: what it lies over, and which support would hold it
};

/// One analysis of one stage.
struct PanelResult {
  MasonryModel model = MasonryModel::uncracked;
  std::vector<NeedleReaction> needles;
  double base_left = 0.0;   ///< upward force on the fixed base left of the cut, N
  double base_right = 0.0;  ///< same, right
  double thrust_left =
      0.0;  ///< sideways force that a held left end gives the wall, + to the right, N
  double thrust_right = 0.0;       ///< same at the right end, + to the left, N
  double load_total = 0.0;         ///< everything that acts downwards, N
  double equilibrium_error = 0.0;  ///< |up - down| / down, from the reactions
  double residual = 0.0;           ///< out-of-balance force left by Newton, relative
  int iterations = 0;              ///< factorisations used
  int coupling_passes = 1;         ///< solutions until needle frames and wall agreed
  double max_settlement = 0.0;     ///< largest downward movement of sound masonry, mm
  double max_compression = 0.0;    ///< largest principal compression, N/mm2, positive
  double residual_load = 0.0;      ///< load that hangs on the residual stiffness, N
  std::vector<LoosePatch> loose;

  /// Empty where the wall stands; else why it does not and what is missing. Reactions, settlements
  /// and compressions mean nothing then and must not be shown.
  std::string no_equilibrium;

  PanelFields fields;

  [[nodiscard]] bool stands() const { return no_equilibrium.empty(); }
};

struct StageResult {
  std::string name;  ///< "cut" for an at-once analysis
  std::vector<PanelResult> analyses;
};

/// How far a needle's reaction moves when the elements are twice as large.
struct MeshEffect {
  MasonryModel model = MasonryModel::uncracked;
  double coarse_size = 0.0;           ///< mm
  std::vector<double> needle_change;  ///< (fine - coarse) / fine, in the job's order of needles
  double base_left_change = 0.0;
  double base_right_change = 0.0;
};

/// Hand against finite elements for one needle. Loads in N.
struct NeedleComparison {
  std::string needle;
  double hand = 0.0;
  double uncracked = 0.0;  ///< NaN where not analysed or not standing
  double cracked = 0.0;    ///< NaN where not analysed or not standing
  std::string reason;      ///< one or more sentences where any differs by over 15%; else empty
  double unyielding = std::numeric_limits<double>::quiet_NaN();  ///< uncracked, if no needle gave
};

struct PhaseTime {
  std::string phase;
  double seconds = 0.0;
};

/// A needle with its frame under the largest load that any method gives it.
struct NeedleDesign {
  NeedleDemand demand;
  NeedleAnswer answer;              ///< under that load, unfactored
  std::vector<std::string> advice;  ///< plain sentences, each computed; may be empty
};

/// Everything that one run of a job finds out.
struct JobResult {
  Job job;
  mesh::WallMesh mesh;
  SpreadResult hand;
  std::vector<StageResult> stages;
  std::vector<MeshEffect> mesh_effects;      ///< one for each analysis of the last stage
  std::vector<NeedleComparison> comparison;  ///< in the job's order of needles
  std::vector<NeedleDesign> needle_designs;  ///< of the needles that have frames, in their order
  std::vector<Check> checks;                 ///< worst first
  std::vector<PhaseTime> times;
};

}  // namespace deadshore::solver
