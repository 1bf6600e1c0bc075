#pragma once

#include "io/commands/exit_code.h"

#include <CLI/CLI.hpp>

namespace deadshore::io {

/// Adds `deadshore view OUT`, which writes the exit code that it earns to `code`. The window is the
/// program `deadshore-view`, so that this one does without VTK's rendering: it takes this one's
/// place.
void add_view_command(CLI::App& app, ExitCode& code);

}  // namespace deadshore::io
