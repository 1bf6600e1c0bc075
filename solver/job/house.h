#pragma once

#include "mesh/plane.h"

#include <string>
#include <vector>

/// The house around the wall, as far as it stands on it. N, mm; loads on areas in N/mm2. All
/// characteristic. What it brings down to the wall: solver/loads/take_down.h.
namespace deadshore::solver {

/// One layer of a floor, a roof or a wall face.
struct Layer {
  std::string material;    ///< as printed in the take-down
  double thickness = 0.0;  ///< mm; 0 where the weight of the material is by area
  double weight = 0.0;     ///< N/mm2 of its face, thickness and all
  std::string source;      ///< of the weight
};
/// All layers of a floor, a roof or a wall face.
using BuildUp = std::vector<Layer>;

/// Weight of all layers, N/mm2 of face.
[[nodiscard]] double weight_of(const BuildUp& build_up);

/// What people and things bring onto an area.
struct ImposedUse {
  std::string use;     ///< such as "domestic"; "as given" where the job gives the load outright
  double load = 0.0;   ///< N/mm2
  std::string source;  ///< of the load
};

/// How joists meet the wall.
enum class JoistDirection {
  onto_wall,   ///< they bear on it
  along_wall,  ///< they run beside it: only a strip of the floor does
};

/// A floor, or the floor of a loft, that bears on the wall at `level`.
struct Floor {
  std::string name;
  double level = 0.0;  ///< at which its joists bear
  mesh::Interval x;    ///< of the wall
  JoistDirection joists = JoistDirection::onto_wall;
  double span = 0.0;   ///< from this wall to the joists' other bearing; or the width of the strip
  double share = 0.5;  ///< of the load over `span` that this wall takes, above 0, up to 1
  BuildUp build_up;
  ImposedUse imposed;
  double movable_partitions = 0.0;  ///< N/mm2, imposed, EN 1991-1-1 6.3.1.2(8)
};

/// A purlin that bears on the wall: part of a roof as a load at a point.
struct Purlin {
  std::string name;
  double x = 0.0;        ///< its middle
  double level = 0.0;    ///< at which it bears
  double bearing = 0.0;  ///< along the wall
  double width = 0.0;    ///< of roof that it carries, on plan
  double span = 0.0;     ///< to its other bearing
  double share = 0.5;    ///< of the load over `span` that this wall takes
};

/// A roof slope. Weights per area of slope become loads on plan by 1 / cos(pitch).
struct Roof {
  std::string name;
  double level = 0.0;        ///< at which it bears
  bool follows_top = false;  ///< it bears on the wall's top instead
  mesh::Interval x;          ///< of the wall
  double pitch = 0.0;        ///< degrees, 0 to below 90
  double run = 0.0;       ///< on plan, from this wall to where the rafters bear next; 0: none bear
  double share = 0.5;     ///< of the load over `run` that this wall takes
  double overhang = 0.0;  ///< on plan, beyond the wall: all of it on the wall, without ceiling
  BuildUp on_slope;       ///< coverings and rafters
  BuildUp on_plan;        ///< a ceiling under it
  double access = 0.0;    ///< imposed load of category H, on plan; never together with snow
  double snow = 0.0;      ///< on plan, shape coefficient and all; 0 where there is none
  std::string snow_source;      ///< of the snow load
  std::string access_source;    ///< of the access load
  std::vector<Purlin> purlins;  ///< whose loads the wall takes at points
};

/// Which way a partition runs.
enum class PartitionRun { along_wall, across_wall };

/// A partition that stands on the joists of a floor.
struct Partition {
  std::string name;
  std::string floor;  ///< the name of a floor whose joists bear on the wall
  PartitionRun run = PartitionRun::along_wall;
  /// From the wall's inner face to its middle where it runs along the wall, else to its near end.
  double distance = 0.0;
  mesh::Interval x;      ///< of the wall, where it runs along it
  double place = 0.0;    ///< x of its middle, where it runs across
  double length = 0.0;   ///< from its near end inwards, where it runs across
  double bearing = 0.0;  ///< of its load along the wall, where it runs across
  double height = 0.0;
  double openings = 0.0;  ///< area of doors in it, mm2
  BuildUp build_up;
};

/// A wall that stands on the wall of the job, such as a storey that is not drawn.
struct UpperWall {
  std::string name;
  double level = 0.0;        ///< of its foot
  bool follows_top = false;  ///< it stands on the wall's top instead
  mesh::Interval x;          ///< of the wall
  double height = 0.0;
  double openings = 0.0;  ///< area of them, mm2
  BuildUp build_up;       ///< masonry and finishes
};

/// A chimney breast and its stack, as far as they stand on the wall: a load at a point.
struct Chimney {
  std::string name;
  double x = 0.0;             ///< its middle
  double level = 0.0;         ///< of the breast's foot
  double width = 0.0;         ///< of the breast along the wall
  double projection = 0.0;    ///< of the breast from the wall's face
  double height = 0.0;        ///< of the breast above `level`
  double stack_width = 0.0;   ///< along the wall
  double stack_depth = 0.0;   ///< across the wall
  double stack_height = 0.0;  ///< 0: the stack is gone
  double solid = 1.0;         ///< part of both that is masonry, the rest flues; above 0, up to 1
  double unit_weight = 0.0;   ///< N/mm3
  double share = 1.0;         ///< that this wall takes
  std::string source;         ///< of the unit weight
};

/// Something heavy that stands on the joists of a floor: a bath, a tank, a piano.
struct Contents {
  std::string name;
  std::string floor;      ///< the name of a floor whose joists bear on the wall
  double x = 0.0;         ///< its middle
  double distance = 0.0;  ///< from the wall's inner face to its middle
  double bearing = 0.0;   ///< of its load along the wall
  double weight = 0.0;    ///< N, taken as imposed
};

/// Everything of the house that stands on the wall.
struct House {
  std::vector<Floor> floors;  ///< lofts among them
  std::vector<Roof> roofs;    ///< a slope each
  std::vector<Partition> partitions;
  std::vector<UpperWall> upper_walls;
  std::vector<Chimney> chimneys;
  std::vector<Contents> contents;
};

}  // namespace deadshore::solver
