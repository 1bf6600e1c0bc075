#pragma once

#include <optional>
#include <string_view>

namespace deadshore::io {

/// How stiff a kind of ground is taken to be under a sole plate where the job does not say, N/mm3;
/// none for ground that nothing may be presumed of. Soft ground sheds load to stiffer neighbours,
/// so a job that hangs on it should give its own.
///
/// Low ends of Terzaghi's ranges for plates 1 ft wide, close to a sole's width ("Evaluation of
/// coefficients of subgrade reaction", 1955; from memory, unverified). Gravel is taken as sand of
/// its density, firm clay as half of stiff clay (common practice, no source).
[[nodiscard]] std::optional<double> usual_subgrade_modulus(std::string_view ground);

}  // namespace deadshore::io
