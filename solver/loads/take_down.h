#pragma once

#include "mesh/wall_shape.h"
#include "solver/job/house.h"

#include <string>
#include <vector>

namespace deadshore::solver {

/// What brings a load: actions that EN 1990 combines with different factors.
enum class Action { dead, floor_imposed, roof_access, snow };

/// What a quantity of the take-down counts: mm2, mm3 or a number of things.
enum class Measure { area, volume, pieces };

/// One line that can be added up by hand: quantity x unit load x share = total.
struct TakeDownLine {
  std::string element;  ///< "bedroom floor"
  std::string item;     ///< "softwood boards, 22 mm"
  Action action = Action::dead;
  Measure measure = Measure::area;
  double quantity = 0.0;   ///< mm2, mm3 or a number, as `measure` says
  double unit_load = 0.0;  ///< N/mm2, N/mm3 or N
  double share = 1.0;      ///< that the wall takes
  double total = 0.0;      ///< N
  std::string working;     ///< how quantity and share come about: "3.8 m x 5.2 m", "1 - 0.9/3.8"
  std::string source;      ///< of the unit load
};

/// Loads of one element by action, characteristic, N.
struct ActionSums {
  double dead = 0.0;
  double floor_imposed = 0.0;  ///< with movable partitions
  double roof_access = 0.0;    ///< people who mend a roof
  double snow = 0.0;

  /// Everything variable that may act at once: snow and access to a roof never do, EN 1991-1-1
  /// 3.3.2(1), so that the larger counts.
  [[nodiscard]] double imposed() const;
  /// Dead and imposed load together.
  [[nodiscard]] double characteristic() const { return dead + imposed(); }
};

/// What one element comes to: one line load or one point load with the element's name, ready for
/// the job.
struct TakenDown {
  std::string element;
  std::string floor;              ///< the floor it stands on, or is; empty where it stands on none
  ActionSums sums;                ///< N, all of it
  bool line = true;               ///< a line load; else a point load
  double level = 0.0;             ///< at which it comes onto the wall, mm
  bool follows_top = false;       ///< on the wall's top instead
  mesh::Interval x;               ///< of the wall over which it is even, mm
  bool bears_on_masonry = false;  ///< see `PointLoad::bears_on_masonry`
};

/// The whole take-down, itemised. `lines` are grouped by element, in the order of `loads`.
struct TakeDown {
  std::vector<TakeDownLine> lines;
  std::vector<TakenDown> loads;  ///< one an element

  /// Of all elements.
  [[nodiscard]] ActionSums total() const;
};

/// Takes the house down onto the wall. Joists count as simply supported at both ends, so that of
/// each thing on a floor the wall takes the share 1 - distance / span.
/// \pre the house has no faults (find_house_faults)
[[nodiscard]] TakeDown take_down(const House& house);

/// Loads of an element combined by EN 1990, N.
struct CombinedSums {
  double service = 0.0;  ///< characteristic, factor 1
  double eq_6_10 = 0.0;
  double eq_6_10a = 0.0;
  double eq_6_10b = 0.0;
};

/// Combines loads by EN 1990, UK NA Table NA.A1.2(B): psi_0 of floors 0.7, snow 0.5, roof access
/// 0.7. Every variable action leads in turn.
[[nodiscard]] CombinedSums combined(const ActionSums& sums);

}  // namespace deadshore::solver
