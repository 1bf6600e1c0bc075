#include "io/job/unprintable.h"

#include <fmt/format.h>

#include <array>

namespace deadshore::io {

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
