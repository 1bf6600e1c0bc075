#include "io/commands/commands.h"
#include "io/job/schema_pages.h"

#include <fmt/format.h>

#include <memory>
#include <stdexcept>
#include <string>
namespace deadshore::io {

namespace {

ExitCode print_keys(const std::string& table) {
  try {
    fmt::print("{}", key_reference(table));
  } catch (const std::invalid_argument& error) {
    throw CLI::ValidationError("TABLE", error.what());
  }
  return ExitCode::done;
}

}  // namespace

void add_keys_command(CLI::App& app, ExitCode& code) {
  CLI::App* command = app.add_subcommand("keys", "Explain the tables and keys of a job file");
  const auto table = std::make_shared<std::string>();
  command->add_option("TABLE", *table, "A table, or top for the keys above the first");
  command->callback([table, &code] { code = print_keys(*table); });
}

void add_schema_command(CLI::App& app, ExitCode& code) {
  CLI::App* command = app.add_subcommand("schema", "Print the job file's JSON schema, for editors");
  command->callback([&code] {
    fmt::print("{}", job_json_schema());
    code = ExitCode::done;
  });
}

}  // namespace deadshore::io
