#include "io/job/house_loads.h"

#include "io/job/job_wording.h"
#include "solver/job/fault_list.h"
#include "solver/loads/take_down.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <string>

namespace deadshore::io {

namespace {

/// Where each part of the house that brings a load is written, by its name.
using Places = std::map<std::string, std::string>;

Places places_of(const HouseTables& house) {
  Places places;
  for (const JobTable& part : named_parts(house)) places.emplace(part.text("name"), part.path());
  return places;
}

void refuse_house_faults(const solver::Job& job, const JobSource& source) {
  solver::FaultList faults;
  solver::find_house_faults(job.house, job.wall, faults);
  if (faults.empty()) return;
  const solver::Fault& first = faults.front();
  source.refuse(source.path_in_file(first.key), first.found, "due: " + first.due);
}

void add_load(const solver::TakenDown& part, const std::string& place, JobSource& source,
              solver::Job& job) {
  if (part.line) {
    source.place(fmt::format("line_load[{}]", job.line_loads.size()), place);
    job.line_loads.push_back({.name = part.element,
                              .level = part.level,
                              .follows_top = part.follows_top,
                              .x = part.x,
                              .dead = part.sums.dead / part.x.length(),
                              .imposed = part.sums.imposed() / part.x.length()});
    return;
  }
  source.place(fmt::format("point_load[{}]", job.point_loads.size()), place);
  job.point_loads.push_back({.name = part.element,
                             .x = part.x.middle(),
                             .level = part.level,
                             .bearing = part.x.length(),
                             .dead = part.sums.dead,
                             .imposed = part.sums.imposed()});
}

/// Finds what goes with the floor that a dead shore carries.
void load_shore(const solver::TakeDown& taken, const std::string& key, const JobSource& source,
                solver::DeadShore& shore) {
  for (const solver::TakenDown& part : taken.loads) {
    if (part.floor.empty()) continue;
    if (part.element == shore.carries && part.floor != shore.carries) {
      source.refuse(
          key,
          fmt::format("{}, which stands on {}", in_quotes(shore.carries), in_quotes(part.floor)),
          "the floor is due, with which it goes");
    }
    if (part.floor == shore.carries && part.element != shore.carries) {
      shore.along_with.push_back(part.element);
    }
  }
}

}  // namespace

void refuse_shared_names(const JobTable& top, const HouseTables& house, const JobSource& source) {
  Places taken;
  const auto take = [&](const JobTable& table) {
    const std::string name = table.text("name");
    const auto [earlier, is_new] = taken.emplace(name, table.path_of("name"));
    if (is_new) return;
    table.refuse("name",
                 fmt::format("{}, also the name at {} (line {})", in_quotes(name), earlier->second,
                             source.line_of(earlier->second)),
                 "due: a name of its own");
  };
  for (const NamedTable& entry : top.tables("line_load")) take(entry.table);
  for (const NamedTable& entry : top.tables("point_load")) take(entry.table);
  for (const JobTable& part : named_parts(house)) take(part);
}

void bring_down_house(const HouseTables& house, JobSource& source, solver::Job& job) {
  if (!(job.wall.length > 0.0)) return;  // a fault that is found with those of the wall
  refuse_house_faults(job, source);
  const Places places = places_of(house);
  const solver::TakeDown taken = solver::take_down(job.house);
  for (const solver::TakenDown& part : taken.loads) {
    add_load(part, places.at(part.element), source, job);
  }
  for (std::size_t i = 0; i < job.dead_shores.size(); ++i) {
    load_shore(taken, fmt::format("dead_shore[{}].carries", i), source, job.dead_shores[i]);
  }
}

}  // namespace deadshore::io
