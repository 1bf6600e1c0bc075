#include "io/results/results_json.h"

#include "io/results/json_numbers.h"
#include "io/results/lift_json.h"
#include "io/results/sensitivity_json.h"
#include "io/results/shores_json.h"
#include "io/results/site_json.h"
#include "io/results/stages_json.h"
#include "io/results/take_down_json.h"
#include "solver/study/envelope.h"
#include "solver/study/stage_facts.h"
#include "solver/study/verdict.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace deadshore::io {
namespace {

void add_if_finite(Json& json, const char* key, double newtons) {
  if (std::isfinite(newtons)) json[key] = kilonewtons(newtons, key);
}

Json items_of(const solver::SpreadSum& sum) {
  Json items = Json::array();
  for (const solver::SpreadItem& item : sum.items) {
    Json entry = {{"name", item.name},
                  {"share", rounded(item.share, item.name)},
                  {"load", kilonewtons(item.load, item.name)}};
    if (item.area > 0.0) entry["area"] = rounded(item.area, item.name);
    if (item.over_opening) entry["round_an_opening"] = true;
    if (item.wedge) entry["by_the_lever"] = true;
    items.push_back(std::move(entry));
  }
  return items;
}

Json hand_of(const solver::Job& job, const solver::SpreadResult& hand) {
  Json needles = Json::object();
  Json items = Json::object();
  for (std::size_t i = 0; i < hand.needles.size(); ++i) {
    const std::string& name = job.needles.at(i).name;
    needles[name] = kilonewtons(hand.needles[i].total, name);
    items[name] = items_of(hand.needles[i]);
  }
  return {
      {"needles", needles},
      {"base",
       {{"left", kilonewtons(hand.left_pier.total, "left pier")},
        {"right", kilonewtons(hand.right_pier.total, "right pier")}}},
      {"no_needle", kilonewtons(hand.on_nothing(), "no needle")},
      {"load_total", kilonewtons(hand.load_total, "hand load total")},
      {"items", items},
      {"items_base", {{"left", items_of(hand.left_pier)}, {"right", items_of(hand.right_pier)}}}};
}

Json check_of(const solver::Check& check) {
  Json json = {{"member", check.member},
               {"check", check.check},
               {"demand", finite_or_null(check.demand)},
               {"capacity", finite_or_null(check.capacity)},
               {"unit", check.unit},
               {"utilisation", finite_or_null(check.utilisation())},
               {"clause", check.clause},
               {"stage", check.stage},
               {"passes", check.passes()}};
  if (check.not_verified) json["not_verified"] = true;
  if (!check.working.empty()) json["working"] = check.working;
  if (!check.caution.empty()) json["caution"] = check.caution;
  return json;
}

/// What a row is called in the verdict: the whole of it is among the checks.
Json named(const solver::Check& check) {
  return {{"member", check.member},
          {"check", check.check},
          {"stage", check.stage},
          {"utilisation", finite_or_null(check.utilisation())}};
}

Json verdict_json(const solver::JobResult& result) {
  const solver::Verdict verdict = verdict_of(result);
  Json fails = Json::array();
  for (const solver::Check& check : verdict.fails) fails.push_back(named(check));
  Json open = Json::array();
  for (const solver::Check& check : verdict.not_verified) {
    Json row = named(check);
    row["why"] = check.caution;
    open.push_back(std::move(row));
  }
  return {{"stands", verdict.stands},
          {"by_tension_alone", verdict.by_tension_alone},
          {"loose_masonry", kilonewtons(verdict.loose_weight, "loose masonry")},
          {"load_on_nothing", kilonewtons(verdict.load_on_nothing, "load on nothing")},
          {"fails", fails},
          {"not_verified", open},
          {"governs", verdict.governs ? named(*verdict.governs) : Json()},
          {"movement_since_start", finite_or_null(verdict.movement_since_start)},
          {"nothing_fails", verdict.nothing_fails()},
          {"objections", objections(verdict)}};
}

Json checks_of(const solver::JobResult& result) {
  Json checks = Json::array();
  for (const solver::Check& check : result.checks) checks.push_back(check_of(check));
  return checks;
}

Json prop_loads_of(const solver::NeedleAnswer& answer) {
  Json props = Json::array();
  for (const solver::PropLoad& prop : answer.props) {
    props.push_back({{"mark", prop.mark},
                     {"place", rounded(prop.place, prop.mark)},
                     {"extension", rounded(prop.extension, prop.mark)},
                     {"load", kilonewtons(prop.load, prop.mark)}});
  }
  return props;
}

Json needle_frame_of(const solver::NeedleDesign& design, const std::string& frame) {
  const solver::NeedleDemand& demand = design.demand;
  const solver::NeedleAnswer& answer = design.answer;
  const std::string& name = demand.needle;
  return {{"frame", frame},
          {"load", kilonewtons(demand.load, name)},
          {"dead_share", rounded(demand.dead_share, name)},
          {"method", demand.method},
          {"stage", demand.stage},
          {"stiffness", rounded(answer.stiffness / 1e3, name)},
          {"settlement", rounded(answer.settlement, name)},
          {"largest_moment", kilonewton_metres(answer.largest_moment, name)},
          {"largest_shear", kilonewtons(answer.largest_shear, name)},
          {"bending_deflection", rounded(answer.bending_deflection, name)},
          {"span", rounded(answer.span, name)},
          {"buckling_factor", finite_or_null(answer.buckling_factor)},
          {"passes", answer.passes},
          {"props", prop_loads_of(answer)},
          {"advice", design.advice}};
}

Json needle_frames_of(const solver::JobResult& result) {
  Json frames = Json::object();
  for (const solver::NeedleDesign& design : result.needle_designs) {
    const std::size_t frame = result.job.needles.at(index_of(design.needle)).frame.value();
    frames[design.demand.needle] = needle_frame_of(design, result.job.needle_frames.at(frame).name);
  }
  return frames;
}

Json comparison_of(const solver::JobResult& result) {
  Json comparison = Json::object();
  for (const solver::NeedleComparison& needle : result.comparison) {
    Json entry = Json::object();
    add_if_finite(entry, "hand", needle.hand);
    add_if_finite(entry, "uncracked", needle.uncracked);
    add_if_finite(entry, "cracked", needle.cracked);
    add_if_finite(entry, "uncracked_if_no_needle_gave", needle.unyielding);
    if (!needle.reason.empty()) entry["reason"] = needle.reason;
    comparison[needle.needle] = entry;
  }
  return comparison;
}

Json design_loads_of(const solver::JobResult& result) {
  Json loads = Json::object();
  for (const solver::EnvelopedLoad& entry : envelope_of(result)) {
    const std::string& needle = result.job.needles.at(index_of(entry.needle)).name;
    loads[needle] = {{"load", kilonewtons(entry.load, needle)}, {"method", entry.method}};
  }
  return loads;
}

Json mesh_of(const solver::JobResult& result) {
  Json effects = Json::array();
  for (const solver::MeshEffect& effect : result.mesh_effects) {
    Json needles = Json::object();
    const std::size_t count = std::min(effect.needle_change.size(), result.job.needles.size());
    for (std::size_t index = 0; index < count; ++index) {
      const double change = effect.needle_change[index];
      const std::string& name = result.job.needles[index].name;
      if (std::isfinite(change)) needles[name] = rounded(change, name);
    }
    Json entry = {{"model", solver::to_string(effect.model)},
                  {"coarse_size", rounded(effect.coarse_size, "coarse mesh size")},
                  {"needle_change", needles}};
    if (is_staged(result)) entry["stage"] = effect.stage;
    effects.push_back(std::move(entry));
  }
  const mesh::QuadMesh& quads = result.mesh.quads;
  return {{"size", rounded(result.mesh.size, "mesh size")},
          {"elements", quads.quad_count()},
          {"nodes", quads.node_count()},
          {"nodes_per_element", quads.nodes_per_quad()},
          {"worst_aspect", rounded(result.mesh.worst_aspect, "worst aspect")},
          {"remarks", result.mesh.remarks},
          {"effect_of_doubling", effects}};
}

}  // namespace

std::string results_json(const solver::JobResult& result, const JobFile& file) {
  Json json;
  json["title"] = result.job.title;
  json["program"] = {{"name", "deadshore"}, {"version", DEADSHORE_VERSION}};
  json["input"] = {{"file", file.name}, {"sha256", sha256_of(file.text)}};
  json["units"] = {{"force", "kN"},   {"length", "mm"}, {"stress", "N/mm2"}, {"stiffness", "kN/mm"},
                   {"moment", "kNm"}, {"area", "mm2"},  {"volume", "mm3"}};
  if (is_staged(result)) {
    json["units"].update({{"time", "day"}, {"angle", "degrees"}, {"line load", "kN/m"}});
  }
  json["load_total"] = kilonewtons(load_total_of(result), "load total");
  if (Json taken = take_down_json(result.take_down); !taken.is_null()) {
    json["take_down"] = std::move(taken);
  }
  json["hand"] = hand_of(result.job, result.hand);
  json["stages"] = stages_json(result);
  json["comparison"] = comparison_of(result);
  json["design_loads"] = design_loads_of(result);
  json["mesh"] = mesh_of(result);
  if (!result.sensitivities.empty()) json["sensitivity"] = sensitivity_json(result);
  json["needle_frames"] = needle_frames_of(result);
  if (!result.shores.empty()) json["shores"] = shores_json(result);
  if (result.lift) json["lift"] = lift_json(*result.lift);
  json["removed"] = removed_json(result.removed);
  add_site_plan(result, json);
  json["verdict"] = verdict_json(result);
  json["checks"] = checks_of(result);
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace deadshore::io
