#pragma once

#include "solver/checks/check.h"
#include "solver/members/safe_load.h"

namespace deadshore::solver {

/// The load on a prop against its safe load. `load` is unfactored under either safety method, since
/// safe loads carry the whole margin; N, mm. \throws MemberError outside the range of the prop or
/// of the basis.
[[nodiscard]] Check check_prop(const Prop& prop, double extension, double load,
                               SafeLoadBasis basis = SafeLoadBasis::lower_of_both);

}  // namespace deadshore::solver
