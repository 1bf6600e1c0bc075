#include "solver/job/stage.h"

#include "solver/job/job.h"

#include <algorithm>

namespace deadshore::solver {

const char* to_string(Act act) {
  switch (act) {
    case Act::fit:
      return "fit";
    case Act::preload:
      return "preload";
    case Act::release:
      return "release";
    case Act::remove:
      return "remove";
    case Act::place:
      return "place";
    case Act::pack:
      return "pack";
    case Act::tighten:
      return "tighten";
    case Act::slacken:
      return "slacken";
    case Act::load_on:
      return "load on";
    case Act::load_off:
      return "load off";
  }
  return "";
}

const char* to_string(WorkPart part) {
  switch (part) {
    case WorkPart::cut:
      return "cut";
    case WorkPart::pockets:
      return "pockets";
    case WorkPart::padstones:
      return "padstones";
    case WorkPart::beam:
      return "beam";
  }
  return "";
}

Target target_of(LoadId load) {
  return std::visit([](auto id) { return Target{id}; }, load);
}

std::string name_of(const Job& job, const Target& target) {
  struct Namer {
    const Job& job;
    std::string operator()(WorkPart part) const { return to_string(part); }
    std::string operator()(NeedleId id) const { return job.needles.at(index_of(id)).name; }
    std::string operator()(ShoreId id) const { return job.dead_shores.at(index_of(id)).name; }
    std::string operator()(LineLoadId id) const { return job.line_loads.at(index_of(id)).name; }
    std::string operator()(PointLoadId id) const { return job.point_loads.at(index_of(id)).name; }
    std::string operator()(LintelId id) const { return job.lintels.at(index_of(id)).shape.name; }
  };
  return std::visit(Namer{job}, target);
}

std::string in_words(const Job& job, const Operation& operation) {
  return std::string(to_string(operation.act)) + " " + name_of(job, operation.target);
}

bool does(const Stage& stage, const Operation& operation) {
  return std::ranges::count(stage.operations, operation) > 0;
}

}  // namespace deadshore::solver
