#pragma once

#include "solver/members/prop.h"

#include <string>

namespace deadshore::solver {

/// Where the safe load of a prop comes from.
enum class SafeLoadBasis {
  lower_of_both,  ///< the supplier's table where there is one, else the lower of the next two
  en_1065,        ///< characteristic strength of EN 1065 over 1.65
  ciria_tn79,     ///< CIRIA TN79 (1977), eccentricity up to 25 mm
  supplier_table,
};

/// The divisor of EN 1065's strength: 1.5 on the load, 1.1 on the prop.
inline constexpr double en_1065_divisor = 1.5 * 1.1;

/// What a prop may carry of unfactored load.
struct SafeLoad {
  double load = 0.0;    ///< N
  std::string clause;   ///< its source
  std::string working;  ///< the numbers substituted
};

/// Safe load of a prop at an extension, for unfactored loads, out of plumb up to 1.5 degrees and
/// eccentric up to 25 mm.
///
/// CIRIA TN79 as quoted in later guidance: the row of sizes 1 to 3 for props up to 3.95 m long, of
/// size 4 for longer ones, linear between its heights; below its first height the first value
/// holds, above its last there is none. \throws MemberError outside the range of the prop or of
/// the basis.
[[nodiscard]] SafeLoad safe_load(const Prop& prop, double extension,
                                 SafeLoadBasis basis = SafeLoadBasis::lower_of_both);

}  // namespace deadshore::solver
