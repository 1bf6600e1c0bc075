#pragma once

#include "solver/checks/check.h"
#include "solver/members/prop.h"

#include <optional>
#include <span>

namespace deadshore::solver {

/// The load on a prop against its safe load.
/// \param extension mm
/// \param load N, unfactored under either safety method, since safe loads carry the whole margin
/// \throws MemberError outside the range of the prop or of the basis.
[[nodiscard]] Check check_prop(const Prop& prop, double extension, double load,
                               SafeLoadBasis basis = SafeLoadBasis::lower_of_both);

/// A prop out of several, with its safe load in N.
struct PropChoice {
  const Prop* prop = nullptr;  ///< one of those given; not owned
  double safe_load = 0.0;      ///< N
};

/// The prop with the least safe load that still carries `load` (N, unfactored) at `extension` (mm);
/// none where no prop does, or none is within its range.
[[nodiscard]] std::optional<PropChoice> weakest_prop_for(double load, double extension,
                                                         std::span<const Prop> props,
                                                         SafeLoadBasis basis);

}  // namespace deadshore::solver
