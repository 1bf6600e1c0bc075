#include "io/files/whole_file.h"

#include "io/error.h"

#include <cerrno>
#include <cstddef>
#include <cstring>
#include <fcntl.h>
#include <fstream>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>
namespace deadshore::io {

namespace {

constexpr std::size_t largest_file = 4U << 20U;

/// An open file, closed with it.
class OpenFile {
 public:
  /// Not blocking: to open a named pipe would otherwise wait for somebody to write to it.
  explicit OpenFile(const std::filesystem::path& path)
      : number_(open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY)) {
    if (number_ < 0) throw FileError(path, std::generic_category().message(errno));
  }
  ~OpenFile() { close(number_); }
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;

  [[nodiscard]] int number() const { return number_; }

 private:
  int number_;
};

void refuse_what_is_no_file(const OpenFile& file, const std::filesystem::path& path) {
  struct stat status {};
  if (fstat(file.number(), &status) != 0) {
    throw FileError(path, std::generic_category().message(errno));
  }
  if (S_ISDIR(status.st_mode)) throw FileError(path, "is a folder, not a file");
  if (!S_ISREG(status.st_mode)) throw FileError(path, "is a pipe or device, not a file");
  if (status.st_size > static_cast<off_t>(largest_file)) {
    throw FileError(path, "is larger than 4 MB");
  }
}

}  // namespace

std::string read_file(const std::filesystem::path& path) {
  const OpenFile file(path);
  refuse_what_is_no_file(file, path);
  // The size is not asked for: it may change, and files of the system say 0.
  std::string text(largest_file + 1, '\0');
  std::size_t size = 0;
  while (size < text.size()) {
    const ssize_t count = read(file.number(), text.data() + size, text.size() - size);
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) throw FileError(path, std::generic_category().message(errno));
    if (count == 0) break;
    size += static_cast<std::size_t>(count);
  }
  if (size > largest_file) throw FileError(path, "is larger than 4 MB");
  text.resize(size);
  return text;
}

void write_file(const std::filesystem::path& path, std::string_view bytes) {
  errno = 0;
  std::ofstream out(path, std::ios::binary);
  out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  out.close();
  if (!out) throw FileError(path, errno == 0 ? "cannot be written" : std::strerror(errno));
}

void replace_file(const std::filesystem::path& path, std::string_view bytes) {
  namespace fs = std::filesystem;
  std::error_code failure;
  const fs::path target = fs::exists(path, failure) ? fs::canonical(path, failure) : path;
  if (failure) throw FileError(path, failure.message());
  if (fs::exists(target, failure) && !fs::is_regular_file(target, failure)) {
    write_file(target, bytes);
    return;
  }
  const fs::path partial = target.string() + ".partial";
  try {
    write_file(partial, bytes);
    fs::rename(partial, target);
  } catch (const FileError&) {
    fs::remove(partial, failure);
    throw;
  } catch (const fs::filesystem_error& error) {
    fs::remove(partial, failure);
    throw FileError(path, error.code().message());
  }
}

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
