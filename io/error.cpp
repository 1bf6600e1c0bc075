#include "io/error.h"

#include "io/job/toml_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace deadshore::io {

namespace {

constexpr std::size_t longest_quote = 80;

bool continues_utf8(char c) {
  return (static_cast<unsigned char>(c) & 0xc0U) == 0x80U;
}

std::string message(const std::string& file, int line, const std::string& key,
                    const std::string& found, const std::string& due) {
  std::string text = fmt::format("{}:{}: ", file, line);
  if (!key.empty()) text += key + ": ";
  text += "found " + found + "; " + due;
  return one_line(std::move(text));
}

}  // namespace

InputError::InputError(std::string file, int line, std::string key, std::string found,
                       std::string due)
    : std::runtime_error(message(file, line, key, found, due)),
      file_(std::move(file)),
      line_(line),
      key_(std::move(key)),
      found_(std::move(found)),
      due_(std::move(due)) {}

FileError::FileError(std::filesystem::path path, const std::string& reason)
    : std::runtime_error(one_line(path.string() + ": " + reason)), path_(std::move(path)) {}

std::string one_line(std::string text) {
  std::string line;
  line.reserve(text.size());
  for (std::size_t position = 0; position < text.size();) {
    const std::size_t bytes = unprintable_bytes(text, position);
    line += bytes > 0 ? ' ' : text[position];
    position += std::max<std::size_t>(bytes, 1);
  }
  return line;
}

std::string printable(std::string text) {
  text = one_line(std::move(text));
  if (text.size() <= longest_quote) return text;
  std::size_t end = longest_quote;
  while (end > 0 && continues_utf8(text[end])) --end;
  text.resize(end);
  return text + "...";
}

}  // namespace deadshore::io
