#pragma once

#include <optional>
#include <string_view>

/// What holds where a job does not say otherwise.
namespace deadshore::io {

/// What a lintel is made of.
struct LintelMaterial {
  std::string_view name;
  double E = 0.0;  ///< N/mm2
  double nu = 0.0;
  double unit_weight = 0.0;  ///< N/mm3
};

/// "concrete", "steel", "timber" or "stone". Unit weights from EN 1991-1-1 annex A, stiffness of
/// C25/30 concrete from EN 1992-1-1 (rounded down from 31000), steel from EN 1993-1-1, timber C24
/// from EN 338 (all from memory, unverified); stone by common practice, no source.
/// \throws std::out_of_range for another name
[[nodiscard]] const LintelMaterial& lintel_material(std::string_view name);

/// How stiff a kind of ground is under a sole plate, N/mm3; none for ground that nothing may be
/// presumed of. Soft ground sheds load to stiffer neighbours, so a job that hangs on it should give
/// its own.
///
/// Low ends of Terzaghi's ranges for plates 1 ft wide, close to a sole's width ("Evaluation of
/// coefficients of subgrade reaction", 1955; from memory, unverified). Gravel is taken as sand of
/// its density, firm clay as half of stiff clay (common practice, no source).
[[nodiscard]] std::optional<double> usual_subgrade_modulus(std::string_view ground);

}  // namespace deadshore::io
