#pragma once

#include "solver/job/job.h"

#include <filesystem>
#include <optional>
#include <string_view>

namespace deadshore::io {

/// Memory that this process could still take, bytes: what the machine has left, less where a
/// container or a limit of the process (ulimit) allows less. Infinite where nobody says.
[[nodiscard]] double available_memory();

/// MemAvailable of the text of /proc/meminfo, bytes.
[[nodiscard]] std::optional<double> memory_in(std::string_view meminfo);

/// Refuses a job whose analysis needs more than `memory` bytes: what it would need, and the
/// smallest mesh that fits. \throws FileError
void refuse_what_does_not_fit(const solver::Job& job, const std::filesystem::path& job_file,
                              double memory);

}  // namespace deadshore::io
