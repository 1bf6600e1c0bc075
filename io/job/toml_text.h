#pragma once

#include <toml++/toml.h>

#include <cstddef>
#include <string>
#include <string_view>
namespace deadshore::io {

/// The tables of a TOML text. `due` names what the file should be, for messages: "a job file".
///
/// toml++ walks and frees tables inside tables by recursion and bounds the depth of values only, so
/// keys of many parts (a.a.a...) are refused before it sees them: they would end the program.
/// \throws InputError where the text is not TOML, or a key has more than 16 parts
[[nodiscard]] toml::table parse_toml(std::string_view text, const std::string& file_name,
                                     std::string_view due);

/// How many bytes of UTF-8 text, from `position` on, are one character that does not print or that
/// changes how the rest is shown: control characters, line and paragraph separators, marks that
/// turn the direction of writing, the byte-order mark. 0 where the character there prints.
[[nodiscard]] std::size_t unprintable_bytes(std::string_view text, std::size_t position);

/// The first such character of a text as "U+001B"; empty where all print.
[[nodiscard]] std::string first_unprintable(std::string_view text);

}  // namespace deadshore::io
