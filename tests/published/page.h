#pragma once

#include "tests/published/comparison.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace deadshore::published {

/// README.md of this folder: every comparison in tables by field, with totals.
/// \throws std::runtime_error if two comparisons of a field share their words
[[nodiscard]] std::string page_of(std::span<const Row> rows);

/// Where two pages disagree, one sentence each: words to the letter, numbers to 0.2%. What follows
/// from numbers of the same page (a difference, a part of a tolerance) is not looked at, for it may
/// be rounding alone.
[[nodiscard]] std::vector<std::string> disagreements(std::string_view committed,
                                                     std::string_view found);

}  // namespace deadshore::published
