#pragma once

#include "io/results/json_numbers.h"
#include "solver/loads/take_down.h"

namespace deadshore::io {

/// "take_down" of results.json: every line of the sum with its units, what each element comes to,
/// the total and its combinations. Null where no house is described.
[[nodiscard]] Json take_down_json(const solver::TakeDown& taken);

}  // namespace deadshore::io
