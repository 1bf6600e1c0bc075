#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace deadshore::io {

/// A job file as it was read: the very bytes that the job was made of, to go with its results.
struct JobFile {
  std::string name;  ///< without its folder
  std::string text;
};

/// \throws FileError where the file cannot be read or is larger than 4 MB.
[[nodiscard]] JobFile read_job_file(const std::filesystem::path& path);

/// SHA-256 of the bytes (FIPS 180-4) in 64 hexadecimal digits, as `sha256sum` prints it.
[[nodiscard]] std::string sha256_of(std::string_view bytes);

}  // namespace deadshore::io
