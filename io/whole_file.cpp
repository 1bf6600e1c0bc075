#include "io/whole_file.h"

#include "io/error.h"

#include <cerrno>
#include <cstddef>
#include <cstring>
#include <fstream>
#include <system_error>

namespace deadshore::io {

namespace {

constexpr std::size_t largest_file = 4U << 20U;

}  // namespace

std::string read_file(const std::filesystem::path& path) {
  std::error_code status;
  if (std::filesystem::is_directory(path, status)) throw FileError(path, "is a folder, not a file");
  errno = 0;
  std::ifstream file(path, std::ios::binary);
  if (!file) throw FileError(path, std::generic_category().message(errno));
  std::string text(largest_file + 1, '\0');
  file.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (file.bad()) throw FileError(path, std::generic_category().message(errno));
  text.resize(static_cast<std::size_t>(file.gcount()));
  if (text.size() > largest_file) throw FileError(path, "is larger than 4 MB");
  return text;
}

void write_file(const std::filesystem::path& path, std::string_view bytes) {
  errno = 0;
  std::ofstream out(path, std::ios::binary);
  out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  out.close();
  if (!out) throw FileError(path, errno == 0 ? "cannot be written" : std::strerror(errno));
}

}  // namespace deadshore::io
