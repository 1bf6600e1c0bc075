#include "io/files/folder_lock.h"

#include "io/error.h"

#include <cerrno>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>
#include <utility>

namespace deadshore::io {

FolderLock::FolderLock(const std::filesystem::path& folder)
    : file_(open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_NOFOLLOW | O_CLOEXEC)) {
  if (file_ < 0) throw FileError(folder, std::generic_category().message(errno));
  if (flock(file_, LOCK_EX | LOCK_NB) == 0 || errno != EWOULDBLOCK) return;
  close(file_);
  throw FileError(folder, "another run is writing it; wait for it or name another folder");
}

FolderLock::~FolderLock() {
  if (file_ >= 0) close(file_);
}

FolderLock::FolderLock(FolderLock&& other) noexcept : file_(std::exchange(other.file_, -1)) {}

bool FolderLock::is_at(const std::filesystem::path& folder) const {
  struct stat held {};
  struct stat there {};
  return fstat(file_, &held) == 0 && lstat(folder.c_str(), &there) == 0 &&
         held.st_dev == there.st_dev && held.st_ino == there.st_ino;
}

}  // namespace deadshore::io
