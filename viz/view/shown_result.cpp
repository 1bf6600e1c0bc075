#include "viz/view/shown_result.h"

#include "viz/view/vtk_reading.h"

#include <fmt/format.h>
#include <vtkCellData.h>
#include <vtkPointData.h>

#include <algorithm>
#include <fstream>

namespace deadshore::viz {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;

json read_answers(const fs::path& file) {
  std::ifstream stream(file);
  if (!stream) throw ViewError(file, "no such file");
  json answers = json::parse(stream, nullptr, false);
  if (answers.is_discarded() || !answers.is_object()) {
    throw ViewError(file, "is not whole; run the job again");
  }
  return answers;
}

const json& list_in(const json& answers, const char* key, const fs::path& file) {
  const auto found = answers.find(key);
  if (found == answers.end() || !found->is_array()) {
    throw ViewError(file, fmt::format("has no list \"{}\"", key));
  }
  return *found;
}

std::vector<std::string> stages_in(const json& answers, const fs::path& file) {
  std::vector<std::string> stages;
  for (const json& stage : list_in(answers, "stages", file)) {
    const auto name = stage.find("name");
    const auto analyses = stage.find("analyses");
    if (name == stage.end() || !name->is_string() || analyses == stage.end() ||
        !analyses->is_object()) {
      throw ViewError(file, "has a stage without a name or analyses");
    }
    stages.push_back(name->get<std::string>());
  }
  if (stages.empty()) throw ViewError(file, "has no stage");
  return stages;
}

std::vector<std::string> analyses_in(const json& answers) {
  std::vector<std::string> there;
  for (const char* model : {"uncracked", "cracked"}) {
    for (const json& stage : answers.at("stages")) {
      if (!stage.at("analyses").contains(model)) continue;
      there.emplace_back(model);
      break;
    }
  }
  return there;
}

/// Where a file's stage and analysis stand in `result.walls`.
ShownWall& place_of(ShownResult& result, vtkFieldData* fields, const fs::path& file) {
  const auto stage = std::ranges::find(result.stages, text_of(fields, "stage").value_or(""));
  const auto model = std::ranges::find(result.analyses, text_of(fields, "model").value_or(""));
  if (stage == result.stages.end() || model == result.analyses.end()) {
    throw ViewError(file, "is of a stage or an analysis that results.json does not have");
  }
  const auto row = static_cast<std::size_t>(stage - result.stages.begin());
  const auto column = static_cast<std::size_t>(model - result.analyses.begin());
  return result.walls.at(row * result.analyses.size() + column);
}

void read_walls(ShownResult& result) {
  for (const fs::path& file : read_collection(result.folder / "wall.pvd")) {
    const auto grid = read_grid(file);
    ShownWall& wall = place_of(result, grid->GetFieldData(), file);
    wall.grid = grid;
    wall.no_equilibrium = text_of(grid->GetFieldData(), "no equilibrium").value_or("");
    const double thickness = number_of(grid->GetFieldData(), "thickness [mm]").value_or(0.0);
    if (thickness > 0.0) result.thickness = thickness;
  }
  if (std::ranges::any_of(result.walls, [](const ShownWall& wall) { return !wall.grid; })) {
    throw ViewError(result.folder / "wall.pvd",
                    "does not list every stage and analysis of results.json");
  }
}

void read_beams(ShownResult& result) {
  if (!fs::exists(result.folder / "beam.pvd")) return;
  for (const fs::path& file : read_collection(result.folder / "beam.pvd")) {
    const auto beam = read_shapes(file);
    place_of(result, beam->GetFieldData(), file).beam = beam;
  }
}

/// As many names as there are things, where the rest of the view looks for them.
void must_have_names(vtkFieldData* fields, const char* name, const fs::path& file) {
  if (texts_of(fields, name).empty()) {
    throw ViewError(file, fmt::format("has no texts \"{}\"", name));
  }
}

}  // namespace

ShownResult read_result(const fs::path& folder) {
  std::error_code failure;
  if (!fs::is_directory(folder, failure)) throw ViewError(folder, "no such folder of results");
  ShownResult result;
  result.folder = folder;
  const fs::path answers = folder / "results.json";
  result.answers = read_answers(answers);
  result.stages = stages_in(result.answers, answers);
  result.analyses = analyses_in(result.answers);
  (void)list_in(result.answers, "checks", answers);
  result.walls.resize(result.stages.size() * result.analyses.size());
  read_walls(result);
  read_beams(result);
  result.supports = read_shapes(folder / "supports.vtp");
  must_have_names(result.supports->GetPointData(), "name", folder / "supports.vtp");
  if (fs::exists(folder / "needles.vtp")) {
    result.needles = read_shapes(folder / "needles.vtp");
    must_have_names(result.needles->GetCellData(), "part", folder / "needles.vtp");
  }
  return result;
}

}  // namespace deadshore::viz
