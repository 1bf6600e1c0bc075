#include "io/commands/terminal.h"

#include "io/error.h"

#include <algorithm>
#include <cstdlib>
#include <unistd.h>

namespace deadshore::io {

namespace {

constexpr std::size_t columns = 80;

std::size_t width_of(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xc0U) != 0x80U;
  }));
}

}  // namespace

std::string fitted(std::string_view text, std::size_t width) {
  std::string cut = printable(std::string(text));
  while (width_of(cut) > width) {
    while ((static_cast<unsigned char>(cut.back()) & 0xc0U) == 0x80U) cut.pop_back();
    cut.pop_back();
  }
  return cut.append(width - width_of(cut), ' ');
}

std::vector<std::string> broken(std::string_view text, std::size_t width) {
  std::vector<std::string> lines;
  std::size_t used = 0;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (word.empty()) continue;
    const bool fits = !lines.empty() && used + 1 + width_of(word) <= width;
    if (fits) {
      lines.back().append(1, ' ').append(word);
      used += 1 + width_of(word);
    } else {
      lines.emplace_back(word);
      used = width_of(word);
    }
  }
  return lines;
}

std::string wrapped(std::string_view text, std::size_t indent) {
  std::string lines;
  for (const std::string& line : broken(text, columns - indent)) {
    lines += std::string(indent, ' ') + line + '\n';
  }
  return lines.empty() ? "\n" : lines;
}

bool wants_colour(int descriptor) {
  const char* refused = std::getenv("NO_COLOR");  // NOLINT(concurrency-mt-unsafe): nobody sets it
  if (refused != nullptr && *refused != '\0') return false;
  const char* terminal = std::getenv("TERM");  // NOLINT(concurrency-mt-unsafe)
  return terminal != nullptr && std::string_view(terminal) != "dumb" && isatty(descriptor) != 0;
}

std::string coloured(std::string_view text) {
  constexpr std::string_view red = "\033[1;31m";
  constexpr std::string_view yellow = "\033[33m";
  constexpr std::string_view plain = "\033[0m";
  std::string painted;
  std::string_view colour;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    const std::size_t alarm = line.find("!! ");
    if (alarm != std::string_view::npos) colour = red;
    if (line.starts_with("! ")) colour = yellow;
    if (line.empty()) colour = {};
    if (colour.empty()) {
      painted.append(line);
    } else {
      painted.append(colour).append(line).append(plain);
    }
    painted += '\n';
    // In the middle of a line the alarm is a cell of a table, and goes no further.
    if (alarm != std::string_view::npos && alarm > 0) colour = {};
  }
  return painted;
}

}  // namespace deadshore::io
