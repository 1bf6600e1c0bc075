#pragma once

#include "io/commands/exit_code.h"

#include <CLI/CLI.hpp>

namespace deadshore::io {

/// Adds `deadshore new [FILE] [--force]`: a commented job to start from, to stdout or to a file
/// that is not there yet. `code` must outlive `app`.
void add_new_command(CLI::App& app, ExitCode& code);

}  // namespace deadshore::io
