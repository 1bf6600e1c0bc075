#include "solver/loads/house_loads.h"

#include "solver/job/fault_list.h"
#include "solver/loads/take_down.h"

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

/// Puts a load where it belongs among those of the job and says where that is.
LoadId add_load(const TakenDown& part, Job& job) {
  if (part.line) {
    job.line_loads.push_back({.name = part.element,
                              .level = part.level,
                              .follows_top = part.follows_top,
                              .x = part.x,
                              .dead = part.sums.dead / part.x.length(),
                              .imposed = part.sums.imposed() / part.x.length(),
                              .from_house = true});
    return LineLoadId{job.line_loads.size() - 1};
  }
  job.point_loads.push_back({.name = part.element,
                             .x = part.x.middle(),
                             .level = part.level,
                             .bearing = part.x.length(),
                             .dead = part.sums.dead,
                             .imposed = part.sums.imposed(),
                             .from_house = true,
                             .bears_on_masonry = part.bears_on_masonry});
  return PointLoadId{job.point_loads.size() - 1};
}

/// Adds what stands on the floor that a dead shore carries, unless it goes along already.
void add_along_with(const TakeDown& taken, const std::vector<LoadId>& loads, DeadShore& shore) {
  const auto carried = std::ranges::find(loads, LoadId{shore.carries});
  if (carried == loads.end()) return;
  const std::string& floor = taken.loads[static_cast<std::size_t>(carried - loads.begin())].element;
  for (std::size_t k = 0; k < loads.size(); ++k) {
    if (taken.loads[k].floor != floor || loads[k] == LoadId{shore.carries}) continue;
    if (std::ranges::count(shore.along_with, loads[k]) == 0) shore.along_with.push_back(loads[k]);
  }
}

}  // namespace

Job with_house_loads(Job job) {
  std::erase_if(job.line_loads, &LineLoad::from_house);
  std::erase_if(job.point_loads, &PointLoad::from_house);
  const TakeDown taken = take_down(job.house);
  std::vector<LoadId> loads;
  for (const TakenDown& part : taken.loads) loads.push_back(add_load(part, job));
  for (DeadShore& shore : job.dead_shores) add_along_with(taken, loads, shore);
  return job;
}

std::vector<Fault> find_faults(const Job& job) {
  // Places in the house mean something on a wall with a length only.
  if (!std::isfinite(job.wall.length) || !(job.wall.length > 0.0)) {
    return find_complete_job_faults(job);
  }
  FaultList faults;
  find_house_faults(job.house, job.wall, faults);
  if (!faults.empty()) return faults;
  return find_complete_job_faults(with_house_loads(job));
}

}  // namespace deadshore::solver
