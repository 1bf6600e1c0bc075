#include "viz/view/folded.h"

#include <algorithm>

namespace deadshore::viz {
namespace {

bool goes_on(char c) {
  return (static_cast<unsigned char>(c) & 0xc0U) == 0x80U;  // the rest of a character in UTF-8
}

/// Where to break a line that is too long: after the last space within `width`, else before a
/// character.
std::size_t place_to_break(const std::string& line, std::size_t width, std::size_t indent) {
  const std::size_t space = line.rfind(' ', width);
  if (space != std::string::npos && space > indent) return space;
  std::size_t place = width;
  while (place > indent + 1 && goes_on(line[place])) --place;
  return place;
}

}  // namespace

std::vector<std::string> folded(const std::vector<std::string>& lines, std::size_t width) {
  std::vector<std::string> narrow;
  for (std::string line : lines) {
    const std::size_t first = std::min(line.find_first_not_of(' '), line.size());
    const std::size_t indent = std::min(first + 2, width / 2);
    std::size_t kept = first;
    while (line.size() > width) {
      const std::size_t place = place_to_break(line, width, kept);
      narrow.push_back(line.substr(0, place));
      const std::size_t next = line.find_first_not_of(' ', place);
      line = next == std::string::npos ? "" : std::string(indent, ' ') + line.substr(next);
      kept = indent;
    }
    if (!line.empty()) narrow.push_back(line);
  }
  return narrow;
}

}  // namespace deadshore::viz
