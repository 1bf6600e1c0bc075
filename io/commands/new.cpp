#include "io/commands/commands.h"
#include "io/error.h"
#include "io/files/whole_file.h"
#include "io/job/schema_pages.h"

#include <fmt/format.h>

#include <filesystem>
#include <memory>
#include <string>
#include <system_error>

namespace deadshore::io {

namespace {

struct NewOptions {
  std::string file;
  bool force = false;
};

void write_starter(const NewOptions& options) {
  std::error_code status;
  if (!options.force && std::filesystem::exists(options.file, status)) {
    throw FileError(options.file, "is there already; --force writes over it");
  }
  replace_file(options.file, starter_job());
}

ExitCode start(const NewOptions& options) {
  if (options.file.empty()) {
    fmt::print("{}", starter_job());
  } else {
    write_starter(options);
    fmt::print("{0}: an invented wall to change into yours; then: deadshore check {0}\n",
               options.file);
  }
  return ExitCode::done;
}

}  // namespace

void add_new_command(CLI::App& app, ExitCode& code) {
  CLI::App* command = app.add_subcommand("new", "Write a commented job to start from");
  const auto options = std::make_shared<NewOptions>();
  command->add_option("FILE", options->file, "Where to write it (default: print it)");
  command->add_flag("--force", options->force, "Write over a file that is there already");
  command->callback([options, &code] { code = start(*options); });
}

}  // namespace deadshore::io
