#pragma once

#include <filesystem>

namespace deadshore::io {

/// Holds a folder against other runs of this program, for as long as it lives: an advisory lock on
/// the folder itself, which the system drops with the process, so that no lock outlives its owner.
/// Where the file system knows no locks (some network drives) nothing is held.
class FolderLock {
 public:
  /// \throws FileError if the folder cannot be opened or another run holds it
  explicit FolderLock(const std::filesystem::path& folder);
  ~FolderLock();
  FolderLock(FolderLock&& other) noexcept;
  FolderLock& operator=(FolderLock&& other) = delete;

  /// Whether the folder that is held is (still) the one at this path.
  [[nodiscard]] bool is_at(const std::filesystem::path& folder) const;

 private:
  int file_ = -1;
};

}  // namespace deadshore::io
