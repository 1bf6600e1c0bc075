#pragma once

#include <filesystem>
#include <string_view>

namespace deadshore::io {

/// Writes a file anew, byte for byte. \throws FileError where it cannot be written.
void write_file(const std::filesystem::path& path, std::string_view bytes);

}  // namespace deadshore::io
