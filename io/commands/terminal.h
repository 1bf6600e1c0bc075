#pragma once

#include <cstddef>
#include <string>
#include <string_view>

/// Text for a terminal of 80 columns.
namespace deadshore::io {

/// `text` cut to `width` characters, or filled up with spaces.
[[nodiscard]] std::string fitted(std::string_view text, std::size_t width);

/// `text` broken between words into lines of at most 80 columns, each with a line end.
[[nodiscard]] std::string wrapped(std::string_view text);

}  // namespace deadshore::io
