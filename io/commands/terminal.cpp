#include "io/commands/terminal.h"

#include "io/error.h"

#include <algorithm>

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

std::string wrapped(std::string_view text) {
  std::string lines;
  std::size_t used = 0;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (word.empty()) continue;
    const std::size_t width = width_of(word);
    if (used > 0) {
      const bool fits = used + 1 + width <= columns;
      lines += fits ? ' ' : '\n';
      used = fits ? used + 1 : 0;
    }
    lines += word;
    used += width;
  }
  lines += '\n';
  return lines;
}

}  // namespace deadshore::io
