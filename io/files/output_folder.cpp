#include "io/files/output_folder.h"

#include "io/error.h"
#include "io/files/whole_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <optional>
#include <stdio.h>  // renameat2
#include <string>
#include <string_view>
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

namespace {

namespace fs = std::filesystem;

bool is_result_file(const fs::path& path) {
  static constexpr std::array<std::string_view, 10> names = {
      "note.html", "note.pdf", "sheet.html",   "results.json", "reactions.csv",
      "wall.pvd",  "beam.pvd", "supports.vtp", "needles.vtp",  "README.txt"};
  const std::string name = path.filename().string();
  return std::ranges::find(names, name) != names.end() ||
         (name.starts_with("wall-") && path.extension() == ".vtu") ||
         (name.starts_with("beam-") && path.extension() == ".vtp");
}

bool is_figure(const fs::path& path) {
  static constexpr std::array<std::string_view, 3> endings = {".svg", ".pdf", ".png"};
  return std::ranges::find(endings, path.extension().string()) != endings.end();
}

/// The first entry of an output folder that this program did not write; empty where there is none.
fs::path first_stranger(const fs::path& folder) {
  for (const fs::directory_entry& entry : fs::directory_iterator(folder)) {
    if (entry.path().filename() == "figures" && entry.is_directory()) {
      for (const fs::directory_entry& figure : fs::directory_iterator(entry.path())) {
        if (!is_figure(figure.path())) return figure.path();
      }
    } else if (!is_result_file(entry.path())) {
      return entry.path();
    }
  }
  return {};
}

void check_earlier_result(const fs::path& out) {
  if (!fs::is_directory(out)) throw FileError(out, "is a file; name a folder for the results");
  if (fs::is_empty(out)) return;
  if (!fs::exists(out / "results.json")) {
    throw FileError(out,
                    "holds something other than an earlier result and will not be replaced; "
                    "name another folder");
  }
  if (const fs::path stranger = first_stranger(out); !stranger.empty()) {
    throw FileError(out, fmt::format("also holds {}, which would be lost; move it or name another "
                                     "folder",
                                     stranger.lexically_relative(out).string()));
  }
}

/// Exchanges two folders in one step; false where the file system cannot.
bool exchange(const fs::path& one, const fs::path& other) {
  return renameat2(AT_FDCWD, one.c_str(), AT_FDCWD, other.c_str(), RENAME_EXCHANGE) == 0;
}

/// Puts `partial` where `out` is, in two steps; undoes the first where the second fails.
void exchange_in_two_steps(const fs::path& partial, const fs::path& out) {
  const fs::path earlier = partial.string() + "-earlier";
  fs::rename(out, earlier);
  std::error_code failure;
  fs::rename(partial, out, failure);
  if (failure) {
    fs::rename(earlier, out);
    throw FileError(out, failure.message());
  }
  fs::rename(earlier, partial);
}

fs::path replaceable_folder(const fs::path& out) {
  try {
    fs::path folder = absolute_folder(out);
    check_replaceable(folder);
    return folder;
  } catch (const fs::filesystem_error& error) {
    throw FileError(error.path1(), error.code().message());
  }
}

/// Empties what a run that was killed left behind.
void remove_remains(const fs::path& partial) {
  if (const fs::path stranger = first_stranger(partial); !stranger.empty()) {
    throw FileError(partial, fmt::format("is to be filled, but holds {}, which no run wrote",
                                         stranger.lexically_relative(partial).string()));
  }
  for (const fs::directory_entry& entry : fs::directory_iterator(partial)) {
    fs::remove_all(entry.path());
  }
}

/// Makes or takes over the folder to fill, and holds it.
FolderLock claim(const fs::path& partial) {
  try {
    constexpr int most_attempts = 10;
    for (int attempt = 0; attempt < most_attempts; ++attempt) {
      fs::create_directory(partial);
      FolderLock lock(partial);
      if (!lock.is_at(partial)) continue;  // another run has just put it in place
      remove_remains(partial);
      return lock;
    }
  } catch (const fs::filesystem_error& error) {
    throw FileError(error.path1(), error.code().message());
  }
  throw FileError(partial, "other runs are writing it again and again");
}

}  // namespace

fs::path absolute_folder(const fs::path& out) {
  if (out.empty()) throw FileError(out, "no name given for the folder of results");
  fs::path path = fs::weakly_canonical(fs::absolute(out));
  if (!path.has_filename()) path = path.parent_path();
  if (!fs::is_directory(path.parent_path())) {
    throw FileError(path.parent_path(), "no such folder; the results were to go inside it");
  }
  return path;
}

void check_replaceable(const fs::path& out) {
  if (access(out.parent_path().c_str(), W_OK | X_OK) != 0) {
    throw FileError(out.parent_path(), std::strerror(errno));
  }
  if (fs::exists(out)) {
    check_earlier_result(out);
  } else if (fs::is_symlink(out)) {
    throw FileError(out, "is a link to what is not there; name a folder for the results");
  }
}

FolderReplacement::FolderReplacement(const fs::path& out)
    : out_(replaceable_folder(out)), partial_(out_.string() + ".partial"), lock_(claim(partial_)) {}

FolderReplacement::~FolderReplacement() {
  std::error_code ignored;
  fs::remove_all(partial_, ignored);
}

void FolderReplacement::put_in_place() {
  flush_all_to_disk(partial_);
  const std::lock_guard placing(placing_);
  check_replaceable(out_);
  std::optional<FolderLock> earlier;  // it is next at the place of `partial_`, until it is removed
  if (!fs::exists(out_)) {
    fs::rename(partial_, out_);
  } else {
    earlier.emplace(out_);
    if (!exchange(partial_, out_)) exchange_in_two_steps(partial_, out_);
  }
  flush_to_disk(out_.parent_path());
  std::error_code ignored;
  fs::remove_all(partial_, ignored);
}

void FolderReplacement::abandon() noexcept {
  placing_.lock();  // and never unlocked
  std::error_code failure;
  for (int attempt = 0; attempt < 100; ++attempt) {  // another file may come while it goes
    fs::remove_all(partial_, failure);
    if (!failure) return;
  }
}

}  // namespace deadshore::io
