#include "io/whole_file.h"

#include "io/error.h"

#include <cerrno>
#include <cstring>
#include <fstream>
#include <iterator>
#include <system_error>

namespace deadshore::io {

std::string read_file(const std::filesystem::path& path) {
  std::error_code status;
  if (std::filesystem::is_directory(path, status)) throw FileError(path, "is a folder, not a file");
  errno = 0;
  std::ifstream file(path, std::ios::binary);
  if (!file) throw FileError(path, std::generic_category().message(errno));
  const std::string text{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  if (file.bad()) throw FileError(path, std::generic_category().message(errno));
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
