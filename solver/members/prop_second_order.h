#pragma once

#include "solver/members/prop.h"

namespace deadshore::solver {

/// Yield strength that tubes of props are taken to have, N/mm2: EN 1065's S235 (from memory,
/// unverified).
inline constexpr double prop_yield = 235.0;

/// Load at which a prop first yields, N, with the load `eccentricity` mm off its axis at head and
/// foot on the same side: second order, by the differential equation of a column of two pieces, the
/// closed prop's length of outer tube under inner tube. Without any safety factor.
/// \param extension mm
/// \throws MemberError outside the prop's range.
[[nodiscard]] double eccentric_strength(const Prop& prop, double extension, double eccentricity);

}  // namespace deadshore::solver
