#include "io/results/sensitivity_json.h"

#include "solver/study/stage_facts.h"

namespace deadshore::io {
namespace {

const char* key_of(solver::Unsure what) {
  switch (what) {
    case solver::Unsure::masonry_stiffness:
      return "masonry_E";
    case solver::Unsure::tensile_strength:
      return "tensile_strength";
    case solver::Unsure::needle_stiffness:
      return "needle_stiffness";
    case solver::Unsure::packing:
      return "packing_loss";
  }
  return "";
}

Json support_json(const solver::JobResult& result, const solver::SupportSensitivity& support) {
  const std::string label = label_of(result.job, support.support);
  Json brackets = Json::object();
  for (const solver::ReactionBracket& bracket : support.brackets) {
    brackets[key_of(bracket.what)] =
        Json::array({kilonewtons(bracket.least, label), kilonewtons(bracket.most, label)});
  }
  Json json = {{"reaction", kilonewtons(support.reaction, label)}, {"brackets", brackets}};
  if (is_staged(result)) json["stage"] = result.stages.at(index_of(support.stage)).name;
  if (const solver::ReactionBracket* worst = support.worst()) {
    json["worst"] = key_of(worst->what);
    if (worst->needle) {
      json["worst_needle"] = result.job.needles.at(index_of(*worst->needle)).name;
    }
  }
  return json;
}

Json ranges() {
  const Json factors = Json::array({solver::least_factor, solver::greatest_factor});
  return {{"masonry_E", factors},
          {"tensile_strength", factors},
          {"needle_stiffness", factors},
          {"packing_loss", Json::array({0.0, solver::packing_loss})}};
}

}  // namespace

Json sensitivity_json(const solver::JobResult& result) {
  Json json = {{"ranges", ranges()}};
  for (const solver::Sensitivity& sensitivity : result.sensitivities) {
    Json supports = Json::object();
    for (const solver::SupportSensitivity& support : sensitivity.supports) {
      supports[label_of(result.job, support.support)] = support_json(result, support);
    }
    json[solver::to_string(sensitivity.model)] = {
        {"mesh_size", rounded(sensitivity.mesh_size, "mesh size")},
        {"by_differences", sensitivity.by_differences},
        {"supports", supports},
        {"no_answer", sensitivity.falls}};
  }
  return json;
}

}  // namespace deadshore::io
