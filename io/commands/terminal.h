#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

/// Text for a terminal of 80 columns.
namespace deadshore::io {

/// `text` cut to `width` characters, or filled up with spaces.
[[nodiscard]] std::string fitted(std::string_view text, std::size_t width);

/// `text` broken between words into lines of at most `width` columns, without line ends; a longer
/// word has a line of its own.
[[nodiscard]] std::vector<std::string> broken(std::string_view text, std::size_t width);

/// The same into lines of at most 80 columns, each after `indent` spaces and with a line end.
[[nodiscard]] std::string wrapped(std::string_view text, std::size_t indent = 0);

/// Whether what is written to a file descriptor goes to a terminal that may be given colours:
/// https://no-color.org and TERM=dumb say no.
[[nodiscard]] bool wants_colour(int descriptor);

/// `text` with its alarms in colour: from a line that holds "!! " (red) or begins with "! "
/// (yellow) to the end of its paragraph or the next alarm.
[[nodiscard]] std::string coloured(std::string_view text);

}  // namespace deadshore::io
