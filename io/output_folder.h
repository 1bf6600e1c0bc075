#pragma once

#include <filesystem>

namespace deadshore::io {

/// `out` as an absolute path without links and trailing slash. \throws FileError if it is empty or
/// the folder above does not exist.
[[nodiscard]] std::filesystem::path absolute_folder(const std::filesystem::path& out);

/// \throws FileError unless `out` can be made, is an empty folder, or holds an earlier result of
///   this program and nothing else.
void check_replaceable(const std::filesystem::path& out);

/// A folder that is filled beside the one it is to replace and then takes its place whole; removed
/// where that does not happen.
class FolderReplacement {
 public:
  /// `out` as `absolute_folder` gives it. \throws FileError as `check_replaceable`.
  explicit FolderReplacement(std::filesystem::path out);
  ~FolderReplacement();
  FolderReplacement(const FolderReplacement&) = delete;
  FolderReplacement& operator=(const FolderReplacement&) = delete;

  /// Where to write.
  [[nodiscard]] const std::filesystem::path& path() const { return partial_; }

  /// Puts the filled folder where `out` was; the earlier one is removed. \throws FileError or
  /// std::filesystem::filesystem_error, and then the earlier one is where it was.
  void put_in_place();

 private:
  std::filesystem::path out_;
  std::filesystem::path partial_;
};

}  // namespace deadshore::io
