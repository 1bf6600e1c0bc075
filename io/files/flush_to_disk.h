#pragma once

#include <filesystem>

namespace deadshore::io {

/// Waits until the disk has a file, or the names in a folder. \throws FileError where it cannot.
void flush_to_disk(const std::filesystem::path& path);

/// The same of every file and folder in a folder, then of itself.
void flush_all_to_disk(const std::filesystem::path& folder);

}  // namespace deadshore::io
