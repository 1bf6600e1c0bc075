#pragma once

#include "io/commands/exit_code.h"

#include <CLI/CLI.hpp>

namespace deadshore::io {

/// Adds `deadshore stages JOB.toml`, which writes the exit code that it earns to `code`.
void add_stages_command(CLI::App& app, ExitCode& code);

}  // namespace deadshore::io
