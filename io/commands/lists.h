#pragma once

#include "io/commands/exit_code.h"

#include <CLI/CLI.hpp>

namespace deadshore::io {

/// Adds `deadshore sections`, `timber`, `props` and `ground`, each with `[PATTERN] [--tables
/// FILE]`: what a job may name. `code` must outlive `app`.
void add_list_commands(CLI::App& app, ExitCode& code);

}  // namespace deadshore::io
