#pragma once

#include "solver/needle/needle_checks.h"

#include <span>
#include <string>
#include <vector>

namespace deadshore::solver {

/// What a needle may be exchanged for.
struct NeedleChoices {
  std::span<const SteelSection> sections;  ///< by rising mass
  std::span<const Prop> props;
};

/// Plain sentences for a needle frame under its demand, each computed: the lightest section that
/// passes where the present one fails or is used to under half; the weakest prop that passes where
/// the present one fails; what moving each prop 100 mm would change.
[[nodiscard]] std::vector<std::string> advise(const NeedleFrame& frame, const NeedleSite& site,
                                              const NeedleDemand& demand,
                                              const MasonryAbove& masonry, const CheckRules& rules,
                                              const NeedleChoices& choices);

}  // namespace deadshore::solver
