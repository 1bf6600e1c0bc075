#pragma once

#include "io/commands/exit_code.h"

#include <CLI/CLI.hpp>

namespace deadshore::io {

/// Adds `check JOB.toml`: reads a job and says whether it makes sense; nothing is analysed. `code`
/// must outlive `app`.
void add_check_command(CLI::App& app, ExitCode& code);

}  // namespace deadshore::io
