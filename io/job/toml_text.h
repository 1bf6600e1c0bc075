#pragma once

#include <toml++/toml.h>

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

}  // namespace deadshore::io
