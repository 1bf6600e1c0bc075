#include "io/results/stages_json.h"

#include "solver/limit/stage_safety.h"
#include "solver/panel/support_reactions.h"
#include "solver/study/stage_facts.h"

namespace deadshore::io {
namespace {

Json point(const mesh::Point& at) {
  return Json::array({rounded(at.x, "point"), rounded(at.y, "point")});
}

Json loose_of(const solver::PanelResult& analysis) {
  Json patches = Json::array();
  for (const solver::LoosePatch& patch : analysis.loose) {
    patches.push_back({{"weight", kilonewtons(patch.weight, "loose weight")},
                       {"area", rounded(patch.area, "loose area")},
                       {"x", range_of(patch.x)},
                       {"y", range_of(patch.y)},
                       {"where", patch.where}});
  }
  return patches;
}

/// The key of a base; null for a support that is none.
const char* key_of_base(solver::SupportKind kind) {
  switch (kind) {
    case solver::SupportKind::left_pier:
      return "left";
    case solver::SupportKind::right_pier:
      return "right";
    case solver::SupportKind::base_under_cut:
      return "cut";
    default:
      return nullptr;
  }
}

Json stations_of(const std::vector<solver::BeamStation>& stations) {
  Json json = {{"x", Json::array()},
               {"moment", Json::array()},
               {"shear", Json::array()},
               {"deflection", Json::array()},
               {"packing", Json::array()}};
  for (const solver::BeamStation& station : stations) {
    json["x"].push_back(rounded(station.x, "beam station"));
    json["moment"].push_back(kilonewton_metres(station.moment, "beam moment"));
    json["shear"].push_back(kilonewtons(station.shear, "beam shear"));
    json["deflection"].push_back(rounded(station.deflection, "beam deflection"));
    json["packing"].push_back(rounded(station.packing, "packing load"));  // N/mm is kN/m
  }
  return json;
}

Json beam_of(const solver::BeamResult& beam) {
  Json json = {{"reaction_left", kilonewtons(beam.reaction_left, "beam reaction")},
               {"reaction_right", kilonewtons(beam.reaction_right, "beam reaction")},
               {"from_wall", kilonewtons(beam.from_wall, "load on the beam")},
               {"moment", kilonewton_metres(beam.largest_moment, "beam moment")},
               {"shear", kilonewtons(beam.largest_shear, "beam shear")},
               {"sag", rounded(beam.sag, "sag of the beam")},
               {"packing_pressure", rounded(beam.packing_pressure, "packing pressure")},
               {"packing_strength", rounded(beam.packing_strength, "packing strength")}};
  if (!beam.stations.empty()) json["stations"] = stations_of(beam.stations);
  return json;
}

Json joists_of(const solver::Job& job, const solver::PanelResult& analysis) {
  Json joists = Json::object();
  for (const solver::JoistReaction& joist : analysis.joists) {
    const std::string& shore = job.dead_shores.at(index_of(joist.shore)).name;
    joists[shore] = {{"force", kilonewtons(joist.force, shore)},
                     {"contact", rounded(joist.contact, shore)}};
  }
  return joists;
}

Json cracks_of(const solver::PanelResult& analysis) {
  Json cracks = Json::array();
  for (const solver::Crack& crack : analysis.cracks) {
    cracks.push_back({{"width", rounded(crack.width, "crack width")},
                      {"length", rounded(crack.length, "crack length")},
                      {"widest", point(crack.widest)},
                      {"from", point(crack.from)},
                      {"to", point(crack.to)},
                      {"angle", rounded(crack.angle, "crack angle")},
                      {"where", crack.where}});
  }
  return cracks;
}

Json damage_of(const solver::Damage& damage) {
  return {{"category", category_of(damage)},
          {"by_strain", damage.by_strain},
          {"by_width", damage.by_width},
          {"tensile_strain", rounded(damage.tensile_strain, "tensile strain")},
          {"deflection_ratio", rounded(damage.deflection_ratio, "deflection ratio")},
          {"widest_crack", rounded(damage.widest_crack, "widest crack")},
          {"in_words", damage.in_words}};
}

/// Forces of needles and bases, and what the mesh may be wrong by for any support.
void add_forces(Json& json, const solver::Job& job, const solver::PanelResult& analysis) {
  Json needles = Json::object();
  Json base = Json::object();
  Json errors = Json::object();
  for (const solver::SupportReaction& reaction : reactions_of(job, analysis)) {
    const std::string label = label_of(job, reaction.support);
    if (reaction.support.kind == solver::SupportKind::needle) {
      needles[job.needles.at(reaction.support.index).name] = kilonewtons(reaction.force, label);
    }
    if (const char* key = key_of_base(reaction.support.kind)) {
      base[key] = kilonewtons(reaction.force, label);
    }
    if (reaction.mesh_error) errors[label] = kilonewtons(*reaction.mesh_error, label);
  }
  json["needles"] = std::move(needles);
  json["base"] = std::move(base);
  if (!errors.empty()) json["mesh_error"] = std::move(errors);
}

void add_reactions(Json& json, const solver::Job& job, const solver::PanelResult& analysis) {
  add_forces(json, job, analysis);
  Json details = Json::object();
  for (const solver::NeedleReaction& needle : analysis.needles) {
    details[needle.name] = {{"x", rounded(needle.x, needle.name)},
                            {"settlement", rounded(needle.settlement, needle.name)},
                            {"contact", rounded(needle.contact, needle.name)}};
  }
  json["equilibrium_error"] = rounded(analysis.equilibrium_error, "equilibrium error");
  json["max_settlement"] = rounded(analysis.max_settlement, "largest settlement");
  json["max_compression"] = rounded(analysis.max_compression, "largest compression");
  json["thrust"] = {{"left", kilonewtons(analysis.thrust_left, "left thrust")},
                    {"right", kilonewtons(analysis.thrust_right, "right thrust")}};
  json["residual_load"] = kilonewtons(analysis.residual_load, "load on the residual stiffness");
  json["needle_details"] = details;
}

void add_staged(Json& json, const solver::Job& job, const solver::PanelResult& analysis) {
  if (analysis.beam) json["beam"] = beam_of(*analysis.beam);
  if (!analysis.joists.empty()) json["joists"] = joists_of(job, analysis);
  if (analysis.model == solver::MasonryModel::cracked) json["cracks"] = cracks_of(analysis);
  if (analysis.damage) json["damage"] = damage_of(*analysis.damage);
}

Json analysis_of(const solver::Job& job, const solver::PanelResult& analysis, bool staged) {
  Json json = Json::object();
  if (analysis.stands()) {
    add_reactions(json, job, analysis);
    if (staged) add_staged(json, job, analysis);
    json["residual"] = rounded(analysis.residual, "Newton residual");
  } else {
    json["no_equilibrium"] = *analysis.no_equilibrium;
  }
  json["iterations"] = analysis.iterations;
  json["coupling_passes"] = analysis.coupling_passes;
  json["load_total"] = kilonewtons(analysis.load_total, "load total");
  json["loose"] = loose_of(analysis);
  return json;
}

Json operations_of(const solver::Job& job, const solver::StageResult& stage) {
  Json operations = Json::array();
  for (const solver::Operation& operation : stage.operations) {
    operations.push_back(in_words(job, operation));
  }
  return operations;
}

Json safety_of(const solver::StageSafety& safety) {
  return {{"factor", finite_or_null(safety.factor)},
          {"upper", finite_or_null(safety.upper_factor)},
          {"let_go", kilonewtons(safety.let_go, "weight in neither bound")},
          {"factor_with_tension", finite_or_null(safety.factor_with_tension)},
          {"loose_weight", kilonewtons(safety.loose_weight, "weight loose without tension")},
          {"tension_needed", safety.tension_needed < solver::most_factor
                                 ? finite_or_null(safety.tension_needed)
                                 : Json(nullptr)},
          {"equilibrium_error", finite_or_null(safety.equilibrium_error)},
          {"tension_left", finite_or_null(safety.tension_left)},
          {"triangles", safety.triangles},
          {"iterations", safety.iterations},
          {"verdict", safety.verdict}};
}

}  // namespace

Json stages_json(const solver::JobResult& result) {
  const bool staged = is_staged(result);
  Json stages = Json::array();
  for (const solver::StageResult& stage : result.stages) {
    Json json = {{"name", stage.name}};
    if (staged) {
      json["day"] = rounded(stage.day, "day");
      json["operations"] = operations_of(result.job, stage);
    }
    Json analyses = Json::object();
    for (const solver::PanelResult& analysis : stage.analyses) {
      analyses[solver::to_string(analysis.model)] = analysis_of(result.job, analysis, staged);
    }
    json["analyses"] = std::move(analyses);
    if (stage.safety) json["safety"] = safety_of(*stage.safety);
    stages.push_back(std::move(json));
  }
  return stages;
}

}  // namespace deadshore::io
