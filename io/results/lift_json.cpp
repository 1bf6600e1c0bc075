#include "io/results/lift_json.h"

namespace deadshore::io {
namespace {

Json held_of(const solver::HeldLoad& held) {
  return {{"name", held.name},
          {"at", rounded(held.at, held.name)},
          {"load", kilonewtons(held.load, held.name)},
          {"working", held.working}};
}

Json stand_of(const solver::HeldLoad& stand) {
  Json json = held_of(stand);
  json["per_leg"] = kilonewtons(stand.per_leg, stand.name);
  json["per_fixing"] = kilonewtons(stand.per_fixing, stand.name);
  return json;
}

}  // namespace

Json lift_json(const solver::LiftPlan& plan) {
  Json lifters = Json::array();
  for (const solver::HeldLoad& lifter : plan.lifters) lifters.push_back(held_of(lifter));
  Json stands = Json::array();
  for (const solver::HeldLoad& stand : plan.stands) stands.push_back(stand_of(stand));
  return {{"length", rounded(plan.length, "beam length")},
          {"weight_of_one", kilonewtons(plan.weight_of_one, "beam weight")},
          {"weight", kilonewtons(plan.weight, "beam weight")},
          {"height", rounded(plan.lift, "height of lift")},
          {"lifters", lifters},
          {"stands", stands},
          {"steps", plan.steps}};
}

}  // namespace deadshore::io
