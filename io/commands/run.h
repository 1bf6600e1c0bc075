#pragma once

#include "io/commands/exit_code.h"

#include <CLI/CLI.hpp>

namespace deadshore::io {

/// Adds `run JOB.toml [-o DIR] [--timings] [--strict]`: analyses a job, writes its results and
/// prints a summary. `code` must outlive `app`.
void add_run_command(CLI::App& app, ExitCode& code);

}  // namespace deadshore::io
