#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace deadshore::io {

/// How many bytes of UTF-8 text, from `position` on, are one character that does not print or that
/// changes how the rest is shown: control characters, line and paragraph separators, marks that
/// turn the direction of writing, the byte-order mark. 0 where the character there prints.
[[nodiscard]] std::size_t unprintable_bytes(std::string_view text, std::size_t position);

/// The first such character of a text as "U+001B"; empty where all print.
[[nodiscard]] std::string first_unprintable(std::string_view text);

}  // namespace deadshore::io
