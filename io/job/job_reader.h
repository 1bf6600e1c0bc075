#pragma once

#include "io/job/units.h"
#include "solver/job/job.h"

#include <filesystem>
#include <string>
#include <string_view>
namespace deadshore::io {

/// Reads and checks a job file (TOML; the keys are in io/job/schema.h). The job makes sense:
/// solver::find_faults finds nothing in it. Throws InputError for the first thing that does not,
/// FileError where the file cannot be read or is larger than 4 MB.
[[nodiscard]] solver::Job read_job(const std::filesystem::path& path);

/// The same from a text; `file_name` is what messages call it. Throws InputError.
[[nodiscard]] solver::Job parse_job(std::string_view text, const std::string& file_name);

/// The same with units loaded before.
[[nodiscard]] solver::Job parse_job(std::string_view text, const std::string& file_name,
                                    const Units& units);

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
