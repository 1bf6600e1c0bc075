#pragma once

#include "io/job/schema.h"

#include <toml++/toml.h>

#include <span>
#include <string>
#include <string_view>
#include <vector>

/// How messages about a job name keys and values, and say what is due.
namespace deadshore::io {

/// Whether it is a space or a tab.
[[nodiscard]] constexpr bool is_blank(char c) {
  return c == ' ' || c == '\t';
}

/// Without the blanks before and after.
[[nodiscard]] std::string_view trimmed(std::string_view text);

/// `text` between quotes, short and printable.
[[nodiscard]] std::string in_quotes(std::string_view text);

/// A key as it is written in TOML: between quotes unless it is of plain letters, digits, _ and -.
[[nodiscard]] std::string as_key(std::string_view key);

/// A value as it is quoted in a message.
[[nodiscard]] std::string describe(const toml::node& node);

/// A number that came without its unit as it should be written.
[[nodiscard]] std::string with_usual_unit(const Key& key, double value);

/// The words of a choice.
[[nodiscard]] std::vector<std::string_view> words_of(const Key& key);

/// `"a", "b" or "c"`.
[[nodiscard]] std::string alternatives(std::span<const std::string_view> words);

/// A value as it is written in TOML, from the schema's way to write it (without quotes).
[[nodiscard]] std::string as_value(const Key& key, std::string_view written);

/// The key's example in the schema's way to write it; its default or its first choice where it has
/// none.
[[nodiscard]] std::string_view example_of(const Key& key);

/// What a key may hold, in words: its range and what else bounds it. Empty where any value will do.
[[nodiscard]] std::string range_of(const Key& key);

/// The clause that says what a key is due to hold.
[[nodiscard]] std::string due_for(const Key& key);

/// A table as its header is written: [wall], [masonry.NAME],
/// [[needle_frame.NAME.prop]].
[[nodiscard]] std::string header_of(const SchemaTable& schema);

}  // namespace deadshore::io
