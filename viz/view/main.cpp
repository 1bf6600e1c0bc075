#include "viz/view/display.h"
#include "viz/view/picked.h"
#include "viz/view/shown_field.h"
#include "viz/view/shown_result.h"
#include "viz/view/view_state.h"
#include "viz/view/window.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

namespace {

using namespace deadshore::viz;

struct Wanted {
  std::string folder;
  std::string stage;
  std::string analysis;
  std::string field;
  double magnify = -1.0;  ///< below 0: what fits
  std::string pick;
  std::string picture;
};

std::size_t chosen(const std::vector<std::string>& names, const std::string& name,
                   const char* what) {
  if (const auto found = find_name(names, name)) return *found;
  throw std::invalid_argument(
      fmt::format("no {} is called \"{}\"; there are: {}", what, name, fmt::join(names, "; ")));
}

ViewState state_wanted(const Wanted& wanted, const ViewChoices& choices) {
  ViewState state = first_view(choices);
  if (!wanted.stage.empty()) state.stage = chosen(choices.stages, wanted.stage, "stage");
  if (!wanted.analysis.empty()) {
    state.analysis = chosen(choices.analyses, wanted.analysis, "analysis");
  }
  if (wanted.field == "none") {
    state.field.reset();
  } else if (!wanted.field.empty()) {
    state.field = chosen(choices.fields, wanted.field, "field");
  }
  if (!std::isfinite(wanted.magnify)) {
    throw std::invalid_argument("--magnify: a number is due, such as 200");
  }
  if (wanted.magnify >= 0.0) state.magnification = wanted.magnify;
  return state;
}

void view(const Wanted& wanted) {
  std::filesystem::path folder = std::filesystem::weakly_canonical(wanted.folder);
  if (!folder.has_filename()) folder = folder.parent_path();
  const ShownResult result = read_result(folder);
  const std::vector<ShownField> fields = fields_of(result);
  const ViewChoices choices = choices_of(result, fields);
  const ViewState state = state_wanted(wanted, choices);
  const Picked picked =
      wanted.pick.empty() ? Picked(PickedNothing{}) : picked_by_name(result, wanted.pick);
  for (const std::string& line : picked_text(picked, result, state.stage, state.analysis)) {
    fmt::print("{}\n", line);
  }
  if (const std::string fault = fault_of_display(); !fault.empty()) {
    throw std::runtime_error(fault);
  }
  const bool is_picture = !wanted.picture.empty();
  ViewWindow window(result, fields, choices, is_picture ? Surface::off_screen : Surface::on_screen);
  if (is_picture) {
    window.show(state, picked);
    window.save_picture(wanted.picture);
  } else {
    window.run(state, picked);
  }
}

int run_command_line(int argc, char** argv) {
  CLI::App app("Shows a folder of results in a window", "deadshore-view");
  Wanted wanted;
  app.add_option("OUT", wanted.folder, "The folder of results")->required();
  app.add_option("--stage", wanted.stage, "The stage to begin with");
  app.add_option("--analysis", wanted.analysis, "uncracked or cracked");
  app.add_option("--field", wanted.field, "What colours the wall; none for nothing");
  app.add_option("--magnify", wanted.magnify, "How many times movements are drawn")
      ->check(CLI::Range(0.0, 1e5));
  app.add_option("--pick", wanted.pick, "What to read: a support or prop, beam, or X,Y in mm");
  app.add_option("--picture", wanted.picture, "Draw one picture into this PNG file and leave");
  try {
    app.parse(argc, argv);
  } catch (const CLI::Success& help) {
    return app.exit(help);
  }
  view(wanted);
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  setenv("VTK_SMP_BACKEND_IN_USE", "Sequential", 1);  // as the program that wrote the results
  try {
    return run_command_line(argc, argv);
  } catch (const std::exception& error) {
    std::fprintf(stderr, "deadshore: %s\n", error.what());
    return 1;
  }
}
