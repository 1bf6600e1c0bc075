#pragma once

#include <optional>
#include <string>

namespace deadshore::solver {

/// A kind of ground and the bearing presumed of it.
struct Ground {
  std::string name;
  /// Lowest presumed allowable bearing, N/mm2, for unfactored loads; none where nothing may be
  /// presumed and someone has to look.
  std::optional<double> presumed_bearing;
  /// Sand and gravel: presumed values hold for foundations about 1 m wide, small soles carry less.
  bool granular = false;
  std::string source;
};

}  // namespace deadshore::solver
