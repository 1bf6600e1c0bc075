#include "io/job/house_loads.h"

#include "io/job/job_wording.h"
#include "solver/job/fault_list.h"
#include "solver/loads/house_loads.h"

#include <fmt/format.h>

#include <cstddef>
#include <map>
#include <string>
#include <utility>

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

/// Says where each load of the house is written, by its place among all loads of its kind.
template <class Loads>
void place_loads(const Loads& loads, const char* table, const Places& places, JobSource& source) {
  for (std::size_t i = 0; i < loads.size(); ++i) {
    if (!loads[i].from_house) continue;
    source.place(fmt::format("{}[{}]", table, i), places.at(loads[i].name));
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
  refuse_house_faults(job, source);
  job = solver::with_house_loads(std::move(job));
  const Places places = places_of(house);
  place_loads(job.line_loads, "line_load", places, source);
  place_loads(job.point_loads, "point_load", places, source);
}

}  // namespace deadshore::io
