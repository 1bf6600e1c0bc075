#pragma once

#include "viz/view/shown_field.h"
#include "viz/view/shown_result.h"
#include "viz/view/view_state.h"

#include <vector>

namespace deadshore::viz {

/// What a folder of results offers to choose from; movements are magnified to be seen at its
/// largest.
[[nodiscard]] ViewChoices choices_of(const ShownResult& result,
                                     const std::vector<ShownField>& fields);

}  // namespace deadshore::viz
