#include "viz/view/view_error.h"

#include <algorithm>
#include <utility>

namespace deadshore::viz {
namespace {

std::string as_one_line(std::string text) {
  std::ranges::replace_if(
      text, [](unsigned char c) { return c < 0x20 || c == 0x7f; }, ' ');
  return text;
}

}  // namespace

ViewError::ViewError(std::filesystem::path file, const std::string& reason)
    : std::runtime_error(as_one_line(file.string() + ": " + reason)), file_(std::move(file)) {}

}  // namespace deadshore::viz
