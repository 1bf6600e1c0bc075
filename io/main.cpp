#include "io/commands/check.h"
#include "io/commands/exit_code.h"
#include "io/commands/keys.h"
#include "io/commands/lists.h"
#include "io/commands/new.h"
#include "io/commands/run.h"
#include "io/commands/schema.h"
#include "io/commands/stages.h"
#include "io/commands/view.h"
#include "io/error.h"
#include "mesh/error.h"
#include "solver/members/error.h"
#include "solver/model/error.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <cstdlib>
#include <exception>
#include <new>
#include <string>

namespace {

using deadshore::io::ExitCode;

ExitCode complain(ExitCode code, const std::string& message) {
  fmt::print(stderr, "deadshore: {}\n", deadshore::io::one_line(message));
  return code;
}

ExitCode run_command_line(int argc, char** argv) {
  ExitCode code = ExitCode::done;
  CLI::App app("How a masonry wall stands on needles while an opening is cut under it",
               "deadshore");
  app.set_version_flag("--version", "deadshore " DEADSHORE_VERSION);
  app.require_subcommand(1);
  deadshore::io::add_new_command(app, code);
  deadshore::io::add_run_command(app, code);
  deadshore::io::add_check_command(app, code);
  deadshore::io::add_stages_command(app, code);
  deadshore::io::add_view_command(app, code);
  deadshore::io::add_keys_command(app, code);
  deadshore::io::add_schema_command(app, code);
  deadshore::io::add_list_commands(app, code);
  try {
    app.parse(argc, argv);
  } catch (const CLI::Success& help_or_version) {
    app.exit(help_or_version);
  } catch (const CLI::ParseError& error) {
    return complain(ExitCode::bad_input, error.what());
  }
  return code;
}

ExitCode guarded(int argc, char** argv) {
  try {
    return run_command_line(argc, argv);
  } catch (const deadshore::io::InputError& error) {
    fmt::print(stderr, "{}\n", error.what());  // starts with file and line, as editors expect
    return ExitCode::bad_input;
  } catch (const deadshore::io::FileError& error) {
    return complain(ExitCode::bad_input, error.what());
  } catch (const deadshore::mesh::GeometryError& error) {
    return complain(ExitCode::bad_input, error.what());
  } catch (const deadshore::solver::MemberError& error) {
    return complain(ExitCode::bad_input, error.what());
  } catch (const deadshore::solver::SolveError& error) {
    return complain(ExitCode::untrusted, error.what());
  } catch (const std::bad_alloc&) {
    return complain(ExitCode::untrusted, "out of memory; a larger `mesh` needs less");
  } catch (const std::exception& error) {
    return complain(ExitCode::untrusted, error.what());
  }
}

}  // namespace

int main(int argc, char** argv) {
  // VTK's parallel filters differ from run to run: results must not.
  setenv("VTK_SMP_BACKEND_IN_USE", "Sequential", 1);
  return static_cast<int>(guarded(argc, argv));
}
