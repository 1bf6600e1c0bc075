#pragma once

#include "mesh/plane.h"
#include "solver/fem/plane_tensor.h"
#include "solver/job/job.h"
#include "solver/job/supports.h"

#include <limits>
#include <map>
#include <optional>
#include <string>
#include <vector>

/// What one analysis of the wall answers. N, mm, N/mm2; tension positive; reactions positive
/// upwards. `reactions_of` (support_reactions.h) puts all of them in one list.
namespace deadshore::solver {

/// Stands in a result for a number that is not known; compare with std::isnan.
inline constexpr double not_known = std::numeric_limits<double>::quiet_NaN();

/// Fields over the mesh of one analysis.
struct PanelFields {
  std::vector<double> displacement;            ///< ux, uy of each node, mm
  std::vector<PlaneTensor> node_stress;        ///< smoothed at nodes, for drawing
  std::vector<PlaneTensor> quad_stress;        ///< mean over each quadrilateral
  std::vector<PlaneTensor> quad_crack_strain;  ///< mean strain taken by open cracks
  std::vector<char> quad_loose;                ///< 1 where the masonry is loose, see `LoosePatch`
  std::vector<char> quad_out;  ///< 1 where it is taken out at this stage; empty: nothing is
};

/// What a needle does; in the job's order, in the wall or not.
struct NeedleReaction {
  std::string name;         ///< for printing
  double x = 0.0;           ///< mm
  double force = 0.0;       ///< N, >= 0
  double settlement = 0.0;  ///< mean downward movement of the soffit over the bearing, mm
  double contact = 0.0;     ///< part of the bearing in contact, 0 to 1
};

/// A section of the permanent beam in one analysis of one stage.
struct BeamStation {
  double x = 0.0;           ///< along the wall, mm
  double moment = 0.0;      ///< N mm, sagging positive, all sections together
  double shear = 0.0;       ///< N
  double deflection = 0.0;  ///< from where it was placed, mm, down positive
  double packing = 0.0;     ///< load from the packing over it, N/mm
};
/// The permanent beam in one analysis of one stage.
struct BeamResult {
  double reaction_left = 0.0;   ///< upwards on it at its left bearing, N, its own weight included
  double reaction_right = 0.0;  ///< same, right
  double from_wall = 0.0;       ///< load that packing brings onto it, N
  double largest_moment = 0.0;  ///< N mm, as a size
  double largest_shear = 0.0;   ///< N, as a size
  double sag = 0.0;  ///< largest deflection from the line between its bearings, mm, down positive
  double packing_pressure = 0.0;  ///< largest, N/mm2
  double packing_strength = 0.0;  ///< characteristic at its age, N/mm2; 0 where it is not packed
  std::vector<BeamStation> stations;  ///< from left to right
};

/// Joist ends that catch the wall, of one dead shore together.
struct JoistReaction {
  ShoreId shore = {};
  double force = 0.0;    ///< upwards on the wall, N
  double contact = 0.0;  ///< part of their length in contact, 0 to 1
};

/// A crack in the masonry: one connected band of cracked elements.
struct Crack {
  double width = 0.0;   ///< at its widest, mm
  double length = 0.0;  ///< along it, mm
  mesh::Point widest;   ///< where it is widest
  mesh::Point from;     ///< its two ends
  mesh::Point to;
  double angle = 0.0;  ///< of the crack line from level, degrees, -90 to 90
  std::string where;   ///< plain words: "over needle N2", "from the corner of opening ..."
};

/// Damage of the masonry above the soffit by limiting tensile strain: Burland, Broms & de Mello
/// 1977; Boscardin & Cording 1989. Category 0 (negligible) to 5 (very severe).
struct Damage {
  int by_strain = 0;              ///< from the tensile strain
  int by_width = 0;               ///< from the widest crack
  double tensile_strain = 0.0;    ///< largest, as a ratio, of bending and shear with level strain
  double deflection_ratio = 0.0;  ///< of the worst stretch of the soffit, since the first stage
  double widest_crack = 0.0;      ///< mm
  std::string in_words;           ///< the worse category's name and what it means
};

/// A connected patch of masonry that has no safe state under the cracked law: the residual
/// stiffness alone carries it, and in truth it would fall.
struct LoosePatch {
  double weight = 0.0;  ///< N
  double area = 0.0;    ///< of wall face, mm2
  mesh::Interval x;     ///< of its bounding box, mm
  mesh::Interval y;     ///< of its bounding box, mm
  std::string where;    ///< plain words: what it lies over, and which support would hold it
};

/// One analysis of one stage.
struct PanelResult {
  MasonryModel model = MasonryModel::uncracked;
  std::vector<NeedleReaction> needles;  ///< in the job's order
  double base_left = 0.0;               ///< upward force on the fixed base left of the cut, N
  double base_right = 0.0;              ///< same, right
  double base_cut = 0.0;      ///< same, under the masonry that the cut will take out; 0 after it
  double thrust_left = 0.0;   ///< that a held left end gives the wall, + to the right, N
  double thrust_right = 0.0;  ///< that a held right end gives the wall, + to the left, N
  double load_total = 0.0;    ///< everything that acts downwards, N
  double equilibrium_error = 0.0;  ///< |up - down| / down, from the reactions
  double residual = 0.0;           ///< relative residual that Newton's method ended with
  int iterations = 0;              ///< factorisations used
  int coupling_passes = 1;         ///< solutions until needle frames and wall agreed
  double max_settlement = 0.0;     ///< largest downward movement of sound masonry, mm
  double max_compression = 0.0;    ///< largest principal compression, N/mm2, positive
  double residual_load = 0.0;      ///< load that the residual stiffness alone carries, N
  std::vector<LoosePatch> loose;   ///< heaviest first; cracked model alone

  std::optional<BeamResult> beam;     ///< once it is placed
  std::vector<JoistReaction> joists;  ///< of the dead shores that are tight
  std::vector<Crack> cracks;          ///< widest first; cracked model alone
  std::optional<Damage> damage;       ///< staged analyses alone

  /// How far each reaction may be off for the size of the elements, plus or minus, N; see
  /// solver/study/mesh_error.h. Empty where it is not known.
  std::map<SupportId, double> mesh_error;

  /// Where the wall does not stand: why not, and what is missing. Reactions, settlements and
  /// compressions mean nothing then and must not be shown.
  std::optional<std::string> no_equilibrium;

  PanelFields fields;

  /// Whether a state of equilibrium was found; without one no force in here means anything.
  [[nodiscard]] bool stands() const { return !no_equilibrium; }

  /// Weight of all loose masonry, N.
  [[nodiscard]] double loose_weight() const {
    double weight = 0.0;
    for (const LoosePatch& patch : loose) weight += patch.weight;
    return weight;
  }
};

}  // namespace deadshore::solver
