#pragma once

#include <filesystem>
#include <string>
#include <string_view>
namespace deadshore::io {

/// Every byte of a file of at most 4 MB. \throws FileError where it is larger, cannot be read, or
/// is a folder, pipe or device (a pipe might never end).
[[nodiscard]] std::string read_file(const std::filesystem::path& path);

/// Writes a file anew, byte for byte. \throws FileError where it cannot be written.
void write_file(const std::filesystem::path& path, std::string_view bytes);

/// The same by way of a file beside it, so that an earlier one is replaced whole or not at all.
/// What is no file (a device) is written to as it is.
void replace_file(const std::filesystem::path& path, std::string_view bytes);

/// Waits until the disk has a file, or the names in a folder. \throws FileError where it cannot.
void flush_to_disk(const std::filesystem::path& path);

/// The same of every file and folder in a folder, then of itself.
void flush_all_to_disk(const std::filesystem::path& folder);

}  // namespace deadshore::io
