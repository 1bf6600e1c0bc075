#include "tests/fuzz/mutate.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <utility>
#include <vector>

namespace deadshore::fuzz {

namespace {

constexpr std::array<std::string_view, 64> words{"0",
                                                 "-0",
                                                 "-1",
                                                 "1e308",
                                                 "1e-308",
                                                 "1e400",
                                                 "nan",
                                                 "inf",
                                                 "-inf",
                                                 "0.5",
                                                 "1e6",
                                                 "1e-3",
                                                 "999999999",
                                                 "0x10",
                                                 "1_000",
                                                 "1979-05-27",
                                                 "true",
                                                 "\"\"",
                                                 "\" \"",
                                                 "\"top\"",
                                                 "\"all\"",
                                                 "\"0 mm\"",
                                                 "\"1 mm\"",
                                                 "\"-1 mm\"",
                                                 "\"1 km\"",
                                                 "\"1e-3 mm\"",
                                                 "\"5.6 m\"",
                                                 "\"2.4 m\"",
                                                 "\"800 mm\"",
                                                 "\"1 kN\"",
                                                 "\"1 GN\"",
                                                 "\"0 kN\"",
                                                 "\"1 N/mm2\"",
                                                 "\"1 kN/m\"",
                                                 "\"50 %\"",
                                                 "\"1 in\"",
                                                 "\"1 kg\"",
                                                 "\"90 deg\"",
                                                 "[]",
                                                 "[[]]",
                                                 "{}",
                                                 "{a = 1}",
                                                 "[1, 2]",
                                                 "\"",
                                                 "\"\"\"",
                                                 "'''",
                                                 "[",
                                                 "]",
                                                 "{",
                                                 "}",
                                                 "[[",
                                                 "=",
                                                 ".",
                                                 ",",
                                                 "#",
                                                 "\\u0000",
                                                 "\xe2\x80\xae",
                                                 "\xef\xbb\xbf",
                                                 "\r",
                                                 std::string_view("\0", 1),
                                                 "\xff",
                                                 "\x1b[2J",
                                                 "\"held\"",
                                                 "\"staged\""};

std::size_t below(std::size_t count, std::mt19937& random) {
  return count == 0 ? 0 : random() % count;  // the same everywhere, as distributions are not
}

using Lines = std::vector<std::string>;

Lines lines_of(const std::string& text) {
  Lines lines(1);
  for (const char c : text) {
    lines.back() += c;
    if (c == '\n') lines.emplace_back();
  }
  return lines;
}

std::string joined(const Lines& lines) {
  std::string text;
  for (const std::string& line : lines) text += line;
  return text;
}

std::string change_lines(const std::string& text, std::mt19937& random) {
  Lines lines = lines_of(text);
  const std::size_t at = below(lines.size(), random);
  const std::size_t other = below(lines.size(), random);
  switch (below(4, random)) {
    case 0:
      lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(at));
      break;
    case 1:
      lines.insert(lines.begin() + static_cast<std::ptrdiff_t>(at), lines[other]);
      break;
    case 2:
      std::swap(lines[at], lines[other]);
      break;
    default: {  // the value of one key for another
      const std::size_t here = lines[at].find('=');
      const std::size_t there = lines[other].find('=');
      if (here != std::string::npos && there != std::string::npos) {
        lines[at] = lines[at].substr(0, here) + lines[other].substr(there);
      }
    }
  }
  return joined(lines);
}

/// Another number for one that is there.
std::string change_number(std::string text, std::mt19937& random) {
  static constexpr std::array<std::string_view, 16> numbers{
      "0",    "-1",  "1",    "2",   "3.6",   "0.1", "5.6",  "100",
      "1000", "1e5", "1e-3", "1e9", "0.001", "2.4", "1e-9", "6.1"};
  const auto is_digit = [](unsigned char c) { return std::isdigit(c) != 0 || c == '.'; };
  const std::size_t start = below(text.size(), random);
  const auto from =
      std::find_if(text.begin() + static_cast<std::ptrdiff_t>(start), text.end(), is_digit);
  const auto to = std::find_if_not(from, text.end(), is_digit);
  return text.replace(from, to, numbers[below(numbers.size(), random)]);
}

std::string change_bytes(std::string text, std::mt19937& random) {
  const std::size_t at = below(text.size() + 1, random);
  switch (below(4, random)) {
    case 0:
      return text.insert(at, words[below(words.size(), random)]);
    case 1:
      return text.erase(at, below(20, random));
    case 2:
      if (at < text.size()) text[at] = static_cast<char>(below(256, random));
      return text;
    default:
      text.resize(at);
      return text;
  }
}

std::string add_piece(std::string text, std::span<const std::string> others, std::mt19937& random) {
  if (others.empty()) return text;
  const Lines pieces = lines_of(others[below(others.size(), random)]);
  const std::size_t from = below(pieces.size(), random);
  const std::size_t count = std::min(pieces.size() - from, 1 + below(12, random));
  std::string piece;
  for (std::size_t i = from; i < from + count; ++i) piece += pieces[i];
  const std::size_t line = text.find('\n', below(text.size(), random));
  return text.insert(line == std::string::npos ? text.size() : line + 1, piece);
}

/// A word in the place of a value.
std::string change_value(std::string text, std::mt19937& random) {
  const std::size_t equals = text.find('=', below(text.size(), random));
  if (equals == std::string::npos) return text;
  const std::size_t end = std::min(text.find('\n', equals), text.size());
  return text.replace(equals + 1, end - equals - 1, words[below(words.size(), random)]);
}

}  // namespace

std::string mutated(std::string text, std::span<const std::string> others, std::mt19937& random) {
  const std::size_t changes = 1 + below(4, random);
  for (std::size_t i = 0; i < changes; ++i) {
    switch (below(8, random)) {
      case 0:
        text = change_bytes(std::move(text), random);
        break;
      case 1:
        text = change_lines(text, random);
        break;
      case 2:
        text = add_piece(std::move(text), others, random);
        break;
      case 3:
      case 4:
        text = change_value(std::move(text), random);
        break;
      default:
        text = change_number(std::move(text), random);
    }
  }
  return text;
}

std::span<const std::string_view> hostile_words() {
  return words;
}

}  // namespace deadshore::fuzz
