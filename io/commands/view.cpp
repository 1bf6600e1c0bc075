#include "io/commands/commands.h"
#include "io/error.h"

#include <cerrno>
#include <csignal>
#include <cstring>
#include <filesystem>
#include <initializer_list>
#include <memory>
#include <string>
#include <system_error>
#include <unistd.h>
#include <vector>

namespace deadshore::io {
namespace {

namespace fs = std::filesystem;

struct ViewOptions {
  std::string folder;
  std::string stage;
  std::string analysis;
  std::string field;
  std::string magnify;
  std::string pick;
  std::string picture;
};

/// Beside this program, as built, or where it is installed.
fs::path view_program() {
  std::error_code failure;
  const fs::path here = fs::read_symlink("/proc/self/exe", failure).parent_path();
  for (const char* folder : {".", DEADSHORE_LIBEXEC}) {
    fs::path program = (here / folder / "deadshore-view").lexically_normal();
    if (access(program.c_str(), X_OK) == 0) return program;
  }
  throw FileError(here / "deadshore-view",
                  "is not there: this Deadshore was built without VTK's rendering");
}

void check_folder(const fs::path& folder) {
  if (!fs::is_directory(folder)) throw FileError(folder, "no such folder");
  for (const char* file : {"results.json", "wall.pvd"}) {
    if (!fs::exists(folder / file)) {
      throw FileError(folder, std::string("is no folder of results: it has no ") + file);
    }
  }
}

std::vector<std::string> arguments_of(const ViewOptions& options) {
  std::vector<std::string> arguments = {"deadshore-view"};
  const auto add = [&](const char* name, const std::string& value) {
    if (!value.empty()) arguments.insert(arguments.end(), {name, value});
  };
  add("--stage", options.stage);
  add("--analysis", options.analysis);
  add("--field", options.field);
  add("--magnify", options.magnify);
  add("--pick", options.pick);
  add("--picture", options.picture);
  arguments.insert(arguments.end(), {"--", options.folder});
  return arguments;
}

/// Does not come back: the view's exit status is this one's.
void become_view(const ViewOptions& options) {
  check_folder(options.folder);
  const fs::path program = view_program();
  std::vector<std::string> arguments = arguments_of(options);
  std::vector<char*> words;
  words.reserve(arguments.size() + 1);
  for (std::string& argument : arguments) words.push_back(argument.data());
  words.push_back(nullptr);
  std::signal(SIGPIPE, SIG_DFL);  // which the window would inherit ignored
  execv(program.c_str(), words.data());
  throw FileError(program, std::strerror(errno));
}

}  // namespace

void add_view_command(CLI::App& app, ExitCode& code) {
  CLI::App* command = app.add_subcommand("view", "Show a folder of results in a window");
  const auto options = std::make_shared<ViewOptions>();
  command->add_option("OUT", options->folder, "A folder that a run wrote")->required();
  command->add_option("--stage", options->stage, "The stage to begin with");
  command->add_option("--analysis", options->analysis, "uncracked or cracked");
  command->add_option("--field", options->field, "What colours the wall, or none");
  command->add_option("--magnify", options->magnify, "Times that movements are drawn")
      ->check(CLI::Range(0.0, 1e5));
  command->add_option("--pick", options->pick,
                      "NAME of a support or prop, beam, or X,Y\n(mm): read it");
  command->add_option("--picture", options->picture, "Draw into this PNG file and leave");
  command->footer("In the window, h lists the keys. Needs an X display.");
  command->callback([options, &code] {
    become_view(*options);
    code = ExitCode::bad_input;
  });
}

}  // namespace deadshore::io
