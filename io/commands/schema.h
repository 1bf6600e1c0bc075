#pragma once

#include "io/commands/exit_code.h"

#include <CLI/CLI.hpp>

namespace deadshore::io {

/// Adds `deadshore schema`: the job file as a JSON schema, for editors. `code` must outlive `app`.
void add_schema_command(CLI::App& app, ExitCode& code);

}  // namespace deadshore::io
