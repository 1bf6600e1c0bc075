#pragma once

#include "io/job/schema.h"

#include <toml++/toml.h>

#include <string>
#include <string_view>
#include <vector>

/// How messages about a job name keys and values, and say what is due.
namespace deadshore::io {

/// `text` between quotes, short and printable.
[[nodiscard]] std::string in_quotes(std::string_view text);

/// A key as it is written in TOML: between quotes unless it is of plain letters, digits, _ and -.
[[nodiscard]] std::string as_key(std::string_view key);

/// A value as it is quoted in a message.
[[nodiscard]] std::string describe(const toml::node& node);

/// A number that came without its unit as it should be written.
[[nodiscard]] std::string with_usual_unit(const SchemaKey& key, double value);

/// The single choices of a key's `choices` or `fallback`.
[[nodiscard]] std::vector<std::string> split_choices(std::string_view choices);

/// `"a", "b" or "c"`.
[[nodiscard]] std::string alternatives(std::string_view choices);

/// A value as it is written in TOML, from the schema's way to write it (without quotes).
[[nodiscard]] std::string as_value(const SchemaKey& key, std::string_view written);

/// The key's example in the schema's way to write it; its default or its first choice where it has
/// none.
[[nodiscard]] std::string example_of(const SchemaKey& key);

/// The clause that says what a key is due to hold.
[[nodiscard]] std::string due_for(const SchemaKey& key);

/// A table as its header is written: [wall], [masonry.NAME],
/// [[needle_frame.NAME.prop]].
[[nodiscard]] std::string header_of(const SchemaTable& schema);

}  // namespace deadshore::io
