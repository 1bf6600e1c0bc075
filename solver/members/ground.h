#pragma once

#include <optional>
#include <string>

namespace deadshore::solver {

/// A kind of ground and the bearing presumed of it.
struct Ground {
  std::string name;  ///< as in the tables of ground
  /// Lowest presumed allowable bearing, N/mm2, for unfactored loads; none where nothing may be
  /// presumed and someone has to look.
  std::optional<double> presumed_bearing;
  /// Sand and gravel: presumed values hold for foundations about 1 m wide, small soles carry less.
  bool granular = false;
  std::string source;  ///< of the presumed bearing

  /// Angle of friction phi', degrees, of granular ground, on which the bearing resistance of a
  /// narrow sole on its surface depends. None where it is not known.
  std::optional<double> friction_angle = {};
  double unit_weight = 18e-6;  ///< N/mm3, above water
  bool slab = false;           ///< a concrete slab, whose thickness matters too
};

}  // namespace deadshore::solver
