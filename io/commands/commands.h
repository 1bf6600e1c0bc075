#pragma once

#include <CLI/CLI.hpp>
namespace deadshore::io {

/// What the program's exit status means.
enum class ExitCode {
  done = 0,
  bad_input = 1,     ///< a bad job file or option, or a file that cannot be read or written
  untrusted = 2,     ///< the analysis could not be done or could not be trusted
  check_failed = 3,  ///< only with --strict: a check failed or is not verified, masonry is loose,
                     ///< or the wall does not stand in some stage
};

/// Adds `run JOB.toml [-o DIR] [--timings] [--strict]`: analyses a job, writes its results and
/// prints a summary. `code` must outlive `app`.
void add_run_command(CLI::App& app, ExitCode& code);

/// Adds `check JOB.toml`: reads a job and says whether it makes sense; nothing is analysed. `code`
/// must outlive `app`.
void add_check_command(CLI::App& app, ExitCode& code);

/// Adds `deadshore view OUT`, which writes the exit code that it earns to `code`. The window is the
/// program `deadshore-view`, so that this one does without VTK's rendering: it takes this one's
/// place.
void add_view_command(CLI::App& app, ExitCode& code);

/// Adds `deadshore new [FILE] [--force]`: a commented job to start from, to stdout or to a file
/// that is not there yet. `code` must outlive `app`.
void add_new_command(CLI::App& app, ExitCode& code);

/// Adds `deadshore stages JOB.toml`, which writes the exit code that it earns to `code`.
void add_stages_command(CLI::App& app, ExitCode& code);

/// Adds `deadshore keys [TABLE]`: what a job file may hold. `code` must outlive `app`.
void add_keys_command(CLI::App& app, ExitCode& code);

/// Adds `deadshore schema`: the job file as a JSON schema, for editors. `code` must outlive `app`.
void add_schema_command(CLI::App& app, ExitCode& code);

/// Adds `deadshore sections`, `timber`, `props` and `ground`, each with `[PATTERN] [--tables
/// FILE]`: what a job may name. `code` must outlive `app`.
void add_list_commands(CLI::App& app, ExitCode& code);

}  // namespace deadshore::io
