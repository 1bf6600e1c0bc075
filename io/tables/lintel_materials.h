#pragma once

#include <string_view>

namespace deadshore::io {

/// What a lintel is taken to be made of where the job does not say otherwise.
struct LintelMaterial {
  std::string_view name;
  double E = 0.0;  ///< N/mm2
  double nu = 0.0;
  double unit_weight = 0.0;  ///< N/mm3
};

/// "concrete", "steel", "timber" or "stone". Unit weights from EN 1991-1-1 annex A, stiffness of
/// C25/30 concrete from EN 1992-1-1 (rounded down from 31000), steel from EN 1993-1-1, timber C24
/// from EN 338 (all from memory, unverified); stone by common practice, no source. Throws
/// std::out_of_range for another name.
[[nodiscard]] const LintelMaterial& lintel_material(std::string_view name);

}  // namespace deadshore::io
