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

}  // namespace deadshore::io
