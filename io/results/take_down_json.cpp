#include "io/results/take_down_json.h"

#include <string>

namespace deadshore::io {
namespace {

const char* name_of(solver::Action action) {
  switch (action) {
    case solver::Action::dead:
      return "dead";
    case solver::Action::floor_imposed:
      return "floor_imposed";
    case solver::Action::roof_access:
      return "roof_access";
    case solver::Action::snow:
      return "snow";
  }
  return "";
}

/// What a quantity and its unit load are given in.
struct LineUnits {
  const char* quantity;
  const char* unit_load;
  double per_quantity;   ///< mm2 or mm3 of one
  double per_unit_load;  ///< N/mm2, N/mm3 or N of one
};

LineUnits units_of(solver::Measure measure) {
  switch (measure) {
    case solver::Measure::area:
      return {"m2", "kN/m2", 1e6, 1e-3};
    case solver::Measure::volume:
      return {"m3", "kN/m3", 1e9, 1e-6};
    case solver::Measure::pieces:
      break;
  }
  return {"1", "kN", 1.0, 1e3};
}

Json line_of(const solver::TakeDownLine& line) {
  const LineUnits units = units_of(line.measure);
  return {{"element", line.element},
          {"item", line.item},
          {"action", name_of(line.action)},
          {"quantity", rounded(line.quantity / units.per_quantity, line.item)},
          {"quantity_unit", units.quantity},
          {"unit_load", rounded(line.unit_load / units.per_unit_load, line.item)},
          {"unit_load_unit", units.unit_load},
          {"share", rounded(line.share, line.item)},
          {"load", kilonewtons(line.total, line.item)},
          {"working", line.working},
          {"source", line.source}};
}

Json sums_of(const solver::ActionSums& sums, const std::string& what) {
  return {{"dead", kilonewtons(sums.dead, what)},
          {"floor_imposed", kilonewtons(sums.floor_imposed, what)},
          {"roof_access", kilonewtons(sums.roof_access, what)},
          {"snow", kilonewtons(sums.snow, what)},
          {"imposed", kilonewtons(sums.imposed(), what)}};
}

Json load_of(const solver::TakenDown& part) {
  Json json = {{"element", part.element}, {"acts", part.line ? "along the wall" : "at one place"}};
  if (!part.floor.empty()) json["floor"] = part.floor;
  json["level"] = rounded(part.level, part.element);
  if (part.follows_top) json["follows_top"] = true;
  json["x"] = Json::array({rounded(part.x.from, part.element), rounded(part.x.to, part.element)});
  json.update(sums_of(part.sums, part.element));
  if (part.line) {  // N/mm is kN/m
    json["dead_per_metre"] = rounded(part.sums.dead / part.x.length(), part.element);
    json["imposed_per_metre"] = rounded(part.sums.imposed() / part.x.length(), part.element);
  }
  return json;
}

Json combinations_of(const solver::CombinedSums& sums) {
  return {{"service", kilonewtons(sums.service, "service")},
          {"6.10", kilonewtons(sums.eq_6_10, "6.10")},
          {"6.10a", kilonewtons(sums.eq_6_10a, "6.10a")},
          {"6.10b", kilonewtons(sums.eq_6_10b, "6.10b")}};
}

}  // namespace

Json take_down_json(const solver::TakeDown& taken) {
  if (taken.loads.empty()) return nullptr;
  Json json = {{"lines", Json::array()}, {"loads", Json::array()}};
  for (const solver::TakeDownLine& line : taken.lines) json["lines"].push_back(line_of(line));
  for (const solver::TakenDown& part : taken.loads) json["loads"].push_back(load_of(part));
  json["total"] = sums_of(taken.total(), "take-down");
  json["combinations"] = combinations_of(solver::combined(taken.total()));
  return json;
}

}  // namespace deadshore::io
