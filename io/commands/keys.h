#pragma once

#include "io/commands/exit_code.h"

#include <CLI/CLI.hpp>

namespace deadshore::io {

/// Adds `deadshore keys [TABLE]`: what a job file may hold. `code` must outlive `app`.
void add_keys_command(CLI::App& app, ExitCode& code);

}  // namespace deadshore::io
