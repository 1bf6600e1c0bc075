#include "io/commands/commands.h"
#include "io/error.h"
#include "mesh/error.h"
#include "solver/job/error.h"
#include "solver/members/error.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <exception>
#include <fcntl.h>
#include <iostream>
#include <new>
#include <stdexcept>
#include <string>
#include <system_error>
#include <unistd.h>

namespace {

using deadshore::io::ExitCode;

constexpr const char* out_of_memory = "out of memory; a larger `mesh` needs less";

/// A line on stderr, if it takes any.
void say(const std::string& line) {
  std::fputs((line + "\n").c_str(), stderr);
}

ExitCode complain(ExitCode code, const std::string& message) {
  say("deadshore: " + deadshore::io::one_line(message));
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
    say(error.what());  // starts with file and line, as editors expect
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
    return complain(ExitCode::untrusted, out_of_memory);
  } catch (const std::length_error&) {
    return complain(ExitCode::untrusted, out_of_memory);
  } catch (const std::system_error& error) {  // a file, stdout, or a thread
    return complain(ExitCode::bad_input, error.what());
  } catch (const std::exception& error) {
    return complain(ExitCode::untrusted, error.what());
  }
}

/// Nothing that was printed may be lost quietly: a full disk shows only here.
ExitCode printed(ExitCode code) {
  errno = 0;
  std::cout.flush();
  if (std::fflush(stdout) == 0 && std::ferror(stdout) == 0 && std::cout.good()) return code;
  if (code == ExitCode::bad_input || code == ExitCode::untrusted) return code;  // told already
  return complain(
      ExitCode::bad_input,
      fmt::format("standard output: {}", errno == 0 ? "cannot be written" : std::strerror(errno)));
}

/// A closed stdin, stdout or stderr would hand its number to the next file that is opened, and what
/// is printed would go there. Stdout gets what cannot be written to: the loss is then noticed.
void fill_standard_files() {
  for (const int file : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
    if (fcntl(file, F_GETFD) != -1 || errno != EBADF) continue;
    static_cast<void>(open("/dev/null", file == STDOUT_FILENO ? O_RDONLY : O_RDWR));
  }
}

}  // namespace

int main(int argc, char** argv) {
  // VTK's parallel filters differ from run to run: results must not.
  setenv("VTK_SMP_BACKEND_IN_USE", "Sequential", 1);
  // A reader that goes away and a file that grows too large are errors like others.
  std::signal(SIGPIPE, SIG_IGN);
  std::signal(SIGXFSZ, SIG_IGN);
  fill_standard_files();
  return static_cast<int>(printed(guarded(argc, argv)));
}
