#include "io/files/flush_to_disk.h"

#include "io/error.h"

#include <cerrno>
#include <fcntl.h>
#include <system_error>
#include <unistd.h>

namespace deadshore::io {

namespace fs = std::filesystem;

void flush_to_disk(const fs::path& path) {
  const int file = open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (file < 0) throw FileError(path, std::generic_category().message(errno));
  const int failure = fsync(file) == 0 ? 0 : errno;
  close(file);
  // Some file systems know no such thing for folders.
  if (failure == 0 || failure == EINVAL || failure == ENOTSUP || failure == EROFS) return;
  throw FileError(path, std::generic_category().message(failure));
}

void flush_all_to_disk(const fs::path& folder) {
  for (const fs::directory_entry& entry : fs::recursive_directory_iterator(folder)) {
    flush_to_disk(entry.path());
  }
  flush_to_disk(folder);
}

}  // namespace deadshore::io
