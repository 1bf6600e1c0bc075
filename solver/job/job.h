#pragma once

#include "mesh/plane.h"
#include "mesh/quad_mesh.h"
#include "mesh/wall_shape.h"
#include "solver/checks/safety_basis.h"
#include "solver/job/house.h"
#include "solver/job/lifting.h"
#include "solver/job/needle_frame.h"
#include "solver/job/permanent_works.h"
#include "solver/job/stage.h"
#include "solver/job/title_block.h"
#include "solver/members/ground.h"
#include "solver/members/prop.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// Everything in N, mm and N/mm2. Loads act downwards and are given positive.
namespace deadshore::solver {

/// Masonry as a continuous material.
struct Masonry {
  std::string name;
  double unit_weight = 0.0;           ///< N/mm3
  double E = 0.0;                     ///< modulus of elasticity, N/mm2
  double nu = 0.0;                    ///< Poisson's ratio, 0 <= nu < 0.5
  double compressive_strength = 0.0;  ///< characteristic, f_k, N/mm2
  double tensile_strength = 0.0;      ///< of the cracked model, N/mm2, >= 0
};

/// A lintel: linear elastic.
struct Lintel {
  mesh::LintelShape shape;
  std::string material;      ///< "concrete", "steel", "timber" or "stone"
  double unit_weight = 0.0;  ///< N/mm3
  double E = 0.0;            ///< modulus of elasticity, N/mm2
  double nu = 0.0;           ///< Poisson's ratio
  double thickness = 0.0;    ///< through the wall, mm; of the wall, unless the job says otherwise
};

/// Whether something outside the wall (a return wall, the neighbour's house) stops an end moving
/// sideways above the soffit.
enum class WallEnd { free, held };

/// A load along a level of the wall.
struct LineLoad {
  std::string name;
  double level = 0.0;        ///< mm above the wall's base
  bool follows_top = false;  ///< it lies on the outline's top instead, and is per mm of x
  mesh::Interval x;          ///< mm
  double dead = 0.0;         ///< characteristic, N per mm of wall
  double imposed = 0.0;      ///< characteristic, N per mm of wall
  bool from_house = false;   ///< brought down by `Job::house`, see solver/loads/house_loads.h

  [[nodiscard]] double characteristic() const { return dead + imposed; }
};

/// A load spread evenly over a short stretch of the wall.
struct PointLoad {
  std::string name;
  double x = 0.0;           ///< its middle, mm
  double level = 0.0;       ///< mm above the wall's base
  double bearing = 0.0;     ///< along the wall, mm
  double dead = 0.0;        ///< characteristic, N
  double imposed = 0.0;     ///< characteristic, N
  bool from_house = false;  ///< as of a line load
  /// At this place, as a purlin does. Of what the house brings down the rest is shared out by
  /// joists on its way or, as a chimney, built into the wall.
  bool bears_on_masonry = true;

  [[nodiscard]] double characteristic() const { return dead + imposed; }
  [[nodiscard]] mesh::Interval span() const { return {x - 0.5 * bearing, x + 0.5 * bearing}; }
};

/// A needle under the soffit: a spring that can only push up, spread evenly over `bearing_width`.
struct Needle {
  std::string name;
  double x = 0.0;              ///< its middle, mm
  double bearing_width = 0.0;  ///< along the wall, mm
  double stiffness = 0.0;      ///< N/mm, > 0; with a frame, found from it
  double slack = 0.0;          ///< gap to close before it bears, mm
  double preload = 0.0;        ///< N it is jacked to against an unmoving wall; not with slack

  /// Index into `Job::needle_frames`; none: stiffness as given.
  std::optional<std::size_t> frame = {};

  /// Where it bears along the wall, mm.
  [[nodiscard]] mesh::Interval bearing() const {
    return {x - 0.5 * bearing_width, x + 0.5 * bearing_width};
  }
};

/// Which pier: left or right of the cut.
enum class PierSide { left, right };

/// What a pier of the wall stands on: a strip of concrete, or of brick stepped out. mm.
struct PierFooting {
  PierSide under = PierSide::left;
  double width = 0.0;  ///< through the wall
  double depth = 0.0;  ///< of its underside below the ground beside it
  Ground ground;
};

/// What keeps rows of props from falling over.
struct Bracing {
  double horizontal = 0.025;  ///< part of the vertical load that acts sideways too
  std::string tied_to;        ///< what takes it in the end, in words; may be empty
};

/// The two laws for masonry, see solver/panel/panel_law.h.
enum class MasonryModel {
  uncracked,  ///< linear elastic
  cracked,    ///< principal tension limited to the tensile strength
};
/// "uncracked" or "cracked".
[[nodiscard]] const char* to_string(MasonryModel model);

/// Whether gravity and loads act at once on the wall as cut, or the work is followed stage by
/// stage.
enum class Sequence { at_once, staged };

/// How the wall is analysed.
struct AnalysisOptions {
  double mesh_size = 100.0;  ///< target element size, mm
  mesh::QuadOrder element = mesh::QuadOrder::eight_node;
  /// Each is analysed.
  std::vector<MasonryModel> masonry = {MasonryModel::uncracked, MasonryModel::cracked};
  Sequence sequence = Sequence::at_once;  ///< a job file's default is staged
};

/// By which rules members are checked.
struct CheckRules {
  SafetyBasis basis;                                        ///< on strengths
  Combination combination = Combination::eq_6_10;           ///< of loads
  CombinationFactors factors;                               ///< on loads
  SafeLoadBasis prop_basis = SafeLoadBasis::lower_of_both;  ///< of props

  /// Design value of a dead and an imposed load that act together, in their unit: unfactored with
  /// permissible stresses, else combined by EN 1990.
  [[nodiscard]] double design_load(double dead, double imposed) const;
};

/// How what comes out is taken apart. mm, N.
struct RemovalOptions {
  double course_height = 75.0;     ///< brick and joint
  double strip_width = 500.0;      ///< along the wall, taken out in one go
  double one_person_lift = 250.0;  ///< N, common practice, no source
  double two_person_lift = 500.0;  ///< N, common practice, no source
  double bulking = 1.5;            ///< loose over solid volume, common practice, no source
};

/// A job: a wall with its cut, its loads and its works. A plain value; `find_faults`
/// (solver/loads/house_loads.h) says whether it makes sense.
struct Job {
  std::string title;
  TitleBlock title_block;
  mesh::WallShape wall;
  double thickness = 0.0;  ///< mm
  WallEnd left_end = WallEnd::free;
  WallEnd right_end = WallEnd::free;
  Masonry masonry;
  std::vector<Lintel> lintels;  ///< their shapes are those of `wall.lintels`, in the same order
  std::vector<LineLoad> line_loads;
  std::vector<PointLoad> point_loads;
  House house;  ///< what it brings down comes to these loads by `with_house_loads`
  std::vector<Needle> needles;
  std::vector<NeedleFrame> needle_frames;
  Bracing bracing;
  std::vector<PierFooting> footings;  ///< of the piers whose footing is known
  std::optional<PermanentBeam> beam;
  std::vector<DeadShore> dead_shores;
  std::optional<Lifting> lifting = {};
  RemovalOptions removal = {};

  /// The order of work; empty: `usual_stages` makes one from the job.
  std::vector<Stage> stages;
  CheckRules check_rules;

  /// What a failing or wasteful needle may be exchanged for.
  std::vector<SteelSection> section_choices;
  std::vector<Prop> prop_choices;

  AnalysisOptions analysis;
};

}  // namespace deadshore::solver
