#pragma once

#include "solver/job/job.h"

#include <span>
#include <string>

namespace deadshore::io {

/// What a stage does, in a builder's words: "tighten floor shore; put in N1 and N2, packed tight";
/// "nothing yet" where there is nothing to do.
[[nodiscard]] std::string done_in_words(const solver::Job& job,
                                        std::span<const solver::Operation> operations);

}  // namespace deadshore::io
