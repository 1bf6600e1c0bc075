#include "io/results/site_json.h"

#include "io/sheet/site_steps.h"

#include <cmath>

namespace deadshore::io {
namespace {

void add_if_known(Json& json, const char* key, double value) {
  if (std::isfinite(value)) json[key] = rounded(value, key);
}

Json step_of(const SiteStep& step) {
  Json json = {{"number", step.number},           {"title", step.title},   {"stage", step.stage},
               {"day", rounded(step.day, "day")}, {"stands", step.stands}, {"work", step.work},
               {"hold_points", step.hold_points}};
  if (!step.needle.empty()) {
    json["most_loaded_needle"] = step.needle;
    json["needle_load"] = kilonewtons(step.needle_load, "needle load");
  }
  add_if_known(json, "expected_movement", step.movement.expected);
  add_if_known(json, "stop_at", step.movement.stop_at);
  if (step.movement.past_stop) json["ask_the_engineer"] = true;
  return json;
}

Json mark_of(const solver::Job& job, std::size_t place, const solver::MonitoringMark& mark) {
  Json json = {{"name", mark_name(place)},
               {"where", mark_place(job, mark)},
               {"x", rounded(mark.at.x, "mark")},
               {"y", rounded(mark.at.y, "mark")}};
  if (mark.movement.empty()) return json;
  json["expected_movement"] = Json::array();
  for (const double movement : mark.movement) {
    json["expected_movement"].push_back(
        std::isfinite(movement) ? Json(rounded(movement, "movement of a mark")) : Json());
  }
  return json;
}

}  // namespace

Json removed_json(const solver::RemovedMasonry& removed) {
  Json courses = Json::array();
  for (const solver::RemovedCourse& course : removed.courses) {
    courses.push_back({{"y", range_of(course.y)},
                       {"area", rounded(course.area, "course")},
                       {"weight", kilonewtons(course.weight, "course")}});
  }
  Json strips = Json::array();
  for (const solver::RemovedStrip& strip : removed.strips) {
    strips.push_back({{"x", range_of(strip.x)},
                      {"area", rounded(strip.area, "strip")},
                      {"weight", kilonewtons(strip.weight, "strip")}});
  }
  Json lintels = Json::array();
  for (const solver::RemovedLintel& lintel : removed.lintels) {
    lintels.push_back({{"name", lintel.name},
                       {"length", rounded(lintel.length, lintel.name)},
                       {"weight", kilonewtons(lintel.weight, lintel.name)},
                       {"pieces", lintel.pieces},
                       {"piece_weight", kilonewtons(lintel.piece_weight, lintel.name)},
                       {"one_person", lintel.one_person}});
  }
  return {{"courses", courses},
          {"strips", strips},
          {"lintels", lintels},
          {"pockets_weight", kilonewtons(removed.pockets_weight, "pockets")},
          {"weight", kilonewtons(removed.weight, "removed weight")},
          {"solid_volume", rounded(removed.solid_volume, "solid volume")},
          {"loose_volume", rounded(removed.loose_volume, "loose volume")}};
}

void add_site_plan(const solver::JobResult& result, Json& json) {
  json["steps"] = Json::array();
  for (const SiteStep& step : site_steps(result)) json["steps"].push_back(step_of(step));
  const solver::Monitoring& monitoring = result.monitoring;
  Json marks = Json::array();
  for (const solver::MonitoringMark& mark : monitoring.marks) {
    marks.push_back(mark_of(result.job, marks.size(), mark));
  }
  json["monitoring"] = {{"marks", marks},
                        {"slight_damage_at", rounded(monitoring.slight_damage, "slight damage")},
                        {"rule", stop_rule(monitoring.slight_damage)}};
}

}  // namespace deadshore::io
