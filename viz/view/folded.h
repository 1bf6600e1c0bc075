#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace deadshore::viz {

/// Lines of at most `width` characters, broken between words and, where a word is longer, within
/// it; what is broken goes on under the indent of its line and two more.
[[nodiscard]] std::vector<std::string> folded(const std::vector<std::string>& lines,
                                              std::size_t width);

}  // namespace deadshore::viz
