#include "io/commands/schema.h"

#include "io/job/schema_pages.h"

#include <fmt/format.h>

namespace deadshore::io {

void add_schema_command(CLI::App& app, ExitCode& code) {
  CLI::App* command = app.add_subcommand("schema", "Print the job file's JSON schema, for editors");
  command->callback([&code] {
    fmt::print("{}", job_json_schema());
    code = ExitCode::done;
  });
}

}  // namespace deadshore::io
