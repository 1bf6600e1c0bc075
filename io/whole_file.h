#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace deadshore::io {

/// Every byte of a file of at most 4 MB. \throws FileError where it is larger or cannot be read.
[[nodiscard]] std::string read_file(const std::filesystem::path& path);

/// Writes a file anew, byte for byte. \throws FileError where it cannot be written.
void write_file(const std::filesystem::path& path, std::string_view bytes);

}  // namespace deadshore::io
