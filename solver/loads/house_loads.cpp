#include "solver/loads/house_loads.h"

#include "solver/job/fault_list.h"
#include "solver/loads/take_down.h"

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

void add_load(const TakenDown& part, Job& job) {
  if (part.line) {
    job.line_loads.push_back({.name = part.element,
                              .level = part.level,
                              .follows_top = part.follows_top,
                              .x = part.x,
                              .dead = part.sums.dead / part.x.length(),
                              .imposed = part.sums.imposed() / part.x.length(),
                              .from_house = true});
    return;
  }
  job.point_loads.push_back({.name = part.element,
                             .x = part.x.middle(),
                             .level = part.level,
                             .bearing = part.x.length(),
                             .dead = part.sums.dead,
                             .imposed = part.sums.imposed(),
                             .from_house = true});
}

/// Adds what stands on the floor that a dead shore carries, unless it goes along already.
void add_along_with(const TakeDown& taken, DeadShore& shore) {
  for (const TakenDown& part : taken.loads) {
    const bool on_its_floor = part.floor == shore.carries && part.element != shore.carries;
    if (on_its_floor && std::ranges::count(shore.along_with, part.element) == 0) {
      shore.along_with.push_back(part.element);
    }
  }
}

}  // namespace

Job with_house_loads(Job job) {
  std::erase_if(job.line_loads, &LineLoad::from_house);
  std::erase_if(job.point_loads, &PointLoad::from_house);
  const TakeDown taken = take_down(job.house);
  for (const TakenDown& part : taken.loads) add_load(part, job);
  for (DeadShore& shore : job.dead_shores) add_along_with(taken, shore);
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
