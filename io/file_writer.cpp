#include "io/file_writer.h"

#include "io/error.h"

#include <cerrno>
#include <cstring>
#include <fstream>

namespace deadshore::io {

void write_file(const std::filesystem::path& path, std::string_view bytes) {
  errno = 0;
  std::ofstream out(path, std::ios::binary);
  out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  out.close();
  if (!out) throw FileError(path, errno == 0 ? "cannot be written" : std::strerror(errno));
}

}  // namespace deadshore::io
