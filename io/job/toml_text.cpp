#include "io/job/toml_text.h"

#include "io/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstddef>
namespace deadshore::io {

namespace {

constexpr int most_key_parts = 16;  // ours have 4 at most

/// Where the string that opens at `start` ends: behind its closing quotes, or at the end of the
/// line or text where they are missing.
std::size_t end_of_string(std::string_view text, std::size_t start) {
  const char quote = text[start];
  const std::string three(3, quote);
  const bool many_lines = text.substr(start).starts_with(three);
  std::size_t position = start + (many_lines ? 3 : 1);
  while (position < text.size()) {
    if (quote == '"' && text[position] == '\\') {
      position += 2;
    } else if (many_lines && text.substr(position).starts_with(three)) {
      return position + 3;
    } else if (!many_lines && (text[position] == quote || text[position] == '\n')) {
      return position + (text[position] == quote ? 1 : 0);
    } else {
      ++position;
    }
  }
  return text.size();
}

/// The place of the first dot that makes a key too long; npos where there is none. Reads the text
/// as TOML up to the first thing in it that is not TOML, where the parser stops too.
std::size_t find_long_key(std::string_view text) {
  int dots = 0;
  for (std::size_t position = 0; position < text.size();) {
    const char c = text[position];
    if (c == '"' || c == '\'') {
      position = end_of_string(text, position);
      continue;
    }
    if (c == '#') {
      position = std::min(text.find('\n', position), text.size());
      continue;
    }
    if (c == '.' && ++dots >= most_key_parts) return position;
    if (std::string_view("\n=,[]{}").find(c) != std::string_view::npos) dots = 0;
    ++position;
  }
  return std::string_view::npos;
}

int line_at(std::string_view text, std::size_t place) {
  return 1 + static_cast<int>(std::ranges::count(text.substr(0, place), '\n'));
}

}  // namespace

toml::table parse_toml(std::string_view text, const std::string& file_name, std::string_view due) {
  if (const std::size_t place = find_long_key(text); place != std::string_view::npos) {
    throw InputError(file_name, line_at(text, place), "",
                     fmt::format("a key of more than {} parts", most_key_parts),
                     fmt::format("{} in TOML is due", due));
  }
  try {
    return toml::parse(text, file_name);
  } catch (const toml::parse_error& error) {
    throw InputError(file_name, static_cast<int>(error.source().begin.line), "",
                     fmt::format("what is not TOML ({})", error.description()),
                     fmt::format("{} in TOML is due", due));
  }
}

namespace {

struct CodeRange {
  unsigned first = 0;
  unsigned last = 0;
};

constexpr std::array<CodeRange, 6> unprintable{{
    {0x0000, 0x001f},
    {0x007f, 0x009f},
    {0x200e, 0x200f},  // marks of direction
    {0x2028, 0x202e},  // separators, embedding and overriding a direction
    {0x2066, 0x2069},  // isolating one
    {0xfeff, 0xfeff},
}};

struct Character {
  unsigned code = 0;
  std::size_t bytes = 0;
};

/// A character of up to three bytes; code 0xfffd for what is longer or not UTF-8.
Character character_at(std::string_view text, std::size_t position) {
  const auto byte = [&](std::size_t i) {
    return position + i < text.size() ? static_cast<unsigned char>(text[position + i]) : 0U;
  };
  const auto follows = [&](std::size_t i) { return (byte(i) & 0xc0U) == 0x80U; };
  if (byte(0) < 0x80U) return {byte(0), 1};
  if ((byte(0) & 0xe0U) == 0xc0U && follows(1)) {
    return {((byte(0) & 0x1fU) << 6U) | (byte(1) & 0x3fU), 2};
  }
  if ((byte(0) & 0xf0U) == 0xe0U && follows(1) && follows(2)) {
    return {((byte(0) & 0x0fU) << 12U) | ((byte(1) & 0x3fU) << 6U) | (byte(2) & 0x3fU), 3};
  }
  return {0xfffdU, 1};
}

bool prints(unsigned code) {
  for (const CodeRange& range : unprintable) {
    if (code >= range.first && code <= range.last) return false;
  }
  return true;
}

}  // namespace

std::size_t unprintable_bytes(std::string_view text, std::size_t position) {
  const Character character = character_at(text, position);
  return prints(character.code) ? 0 : character.bytes;
}

std::string first_unprintable(std::string_view text) {
  for (std::size_t position = 0; position < text.size(); ++position) {
    const Character character = character_at(text, position);
    if (!prints(character.code)) return fmt::format("U+{:04X}", character.code);
  }
  return "";
}

}  // namespace deadshore::io
