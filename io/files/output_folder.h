#pragma once

#include <filesystem>
#include <mutex>
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

/// `out` as an absolute path without links and trailing slash. \throws FileError if it is empty or
/// the folder above does not exist.
[[nodiscard]] std::filesystem::path absolute_folder(const std::filesystem::path& out);

/// \throws FileError unless `out` can be made, is an empty folder, or holds an earlier result of
///   this program and nothing else.
void check_replaceable(const std::filesystem::path& out);

/// A folder OUT.partial that is filled beside the one it is to replace and then takes its place
/// whole; removed where that does not happen. What a killed run left there is removed; of two runs
/// at once the second is refused.
class FolderReplacement {
 public:
  /// \throws FileError as `absolute_folder` and `check_replaceable`; or if another run is at it, or
  ///   OUT.partial holds what no run wrote
  explicit FolderReplacement(const std::filesystem::path& out);
  ~FolderReplacement();
  FolderReplacement(const FolderReplacement&) = delete;
  FolderReplacement& operator=(const FolderReplacement&) = delete;

  /// Where to write.
  [[nodiscard]] const std::filesystem::path& path() const { return partial_; }

  /// Puts the filled folder where `out` was, once the disk has all of it; the earlier one is
  /// removed. \throws FileError or std::filesystem::filesystem_error, and then the earlier one is
  /// where it was.
  void put_in_place();

  /// Removes the partial folder while another thread may still write to it. Never again lets
  /// anything be put in place: for a process that is about to end.
  void abandon() noexcept;

 private:
  std::filesystem::path out_;
  std::filesystem::path partial_;
  FolderLock lock_;
  std::mutex placing_;
};

}  // namespace deadshore::io
