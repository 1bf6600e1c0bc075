#include "io/results/shores_json.h"

namespace deadshore::io {
namespace {

Json loads_of(const solver::ShoreDesign& design) {
  Json loads = Json::array();
  for (const solver::HeadLoad& load : design.loads) {
    loads.push_back({{"from", load.from},
                     {"x", rounded(load.x, load.from)},
                     {"dead", kilonewtons(load.dead, load.from)},
                     {"imposed", kilonewtons(load.imposed, load.from)}});
  }
  return loads;
}

Json uprights_of(const solver::ShoreDesign& design) {
  Json uprights = Json::array();
  for (const solver::UprightLoad& upright : design.uprights) {
    Json entry = {{"mark", upright.mark},
                  {"x", rounded(upright.x, upright.mark)},
                  {"load", kilonewtons(upright.load, upright.mark)}};
    if (!upright.extra_for.empty()) entry["extra_for"] = upright.extra_for;
    uprights.push_back(std::move(entry));
  }
  return uprights;
}

Json shore_of(const solver::ShoreDesign& design) {
  const std::string& name = design.name;
  if (design.uprights.empty()) {  // it would tip: there are no figures to give
    return {{"lever", rounded(design.lever, name)},
            {"loads", loads_of(design)},
            {"advice", design.advice}};
  }
  return {{"lever", rounded(design.lever, name)},
          {"length", rounded(design.length, name)},
          {"total", kilonewtons(design.total, name)},
          {"largest_moment", kilonewton_metres(design.largest_moment, name)},
          {"largest_shear", kilonewtons(design.largest_shear, name)},
          {"deflection", rounded(design.deflection, name)},
          {"loads", loads_of(design)},
          {"uprights", uprights_of(design)},
          {"advice", design.advice}};
}

}  // namespace

Json shores_json(const solver::JobResult& result) {
  Json shores = Json::object();
  for (const solver::ShoreDesign& design : result.shores) shores[design.name] = shore_of(design);
  return shores;
}

}  // namespace deadshore::io
