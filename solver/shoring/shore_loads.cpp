#include "solver/shoring/shore_loads.h"

#include "solver/job/fault_list.h"
#include "solver/job/job.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace deadshore::solver {

namespace {

constexpr double on_the_row = 0.5;  // mm

mesh::Interval common(mesh::Interval a, mesh::Interval b) {
  return {std::max(a.from, b.from), std::min(a.to, b.to)};
}

void add_line(const LineLoad& load, const ShoreFrame& frame, RowLoads& loads) {
  const double lever = lever_of(frame);
  const mesh::Interval on_row = common(load.x, frame.x);
  if (on_row.length() > 0.0)
    loads.stretches.push_back({on_row, lever * load.dead, lever * load.imposed});
  if (load.x.length() - std::max(0.0, on_row.length()) > on_the_row)
    loads.beside.push_back(load.name);
}

void add_point(const PointLoad& load, const ShoreFrame& frame, RowLoads& loads) {
  const double lever = lever_of(frame);
  if (load.x < frame.x.from || load.x > frame.x.to) {
    loads.beside.push_back(load.name);
    return;
  }
  loads.points.push_back({load.name, false, load.x, lever * load.dead, lever * load.imposed});
}

bool further_left(const HeadLoad& a, const HeadLoad& b) {
  return a.x < b.x;
}

}  // namespace

double lever_of(const ShoreFrame& frame) {
  return frame.joist_span / (frame.joist_span - frame.distance);
}

RowLoads loads_on_row(const Job& job, const DeadShore& shore) {
  RowLoads loads;
  for (const LoadId load : loads_of(shore)) {
    if (const auto* line = std::get_if<LineLoadId>(&load)) {
      add_line(job.line_loads[index_of(*line)], *shore.frame, loads);
    } else {
      add_point(job.point_loads[index_of(std::get<PointLoadId>(load))], *shore.frame, loads);
    }
  }
  std::ranges::stable_sort(loads.points, further_left);
  return loads;
}

std::vector<HeadLoad> head_loads(const RowLoads& loads, const ShoreFrame& frame, double joist) {
  const double spacing = frame.joist_spacing;
  const mesh::Interval row = frame.x;
  std::vector<HeadLoad> all = loads.points;
  const double first = joist - std::ceil((joist - row.from) / spacing + 1.0) * spacing;
  for (double x = first; x - 0.5 * spacing < row.to; x += spacing) {
    const mesh::Interval taken{x - 0.5 * spacing, x + 0.5 * spacing};
    HeadLoad load{"joists", true, std::clamp(x, row.from, row.to), 0.0, 0.0};
    for (const RowStretch& stretch : loads.stretches) {
      const double length = std::max(0.0, overlap(taken, stretch.x));
      load.dead += length * stretch.dead;
      load.imposed += length * stretch.imposed;
    }
    if (load.characteristic() > 0.0) all.push_back(std::move(load));
  }
  std::ranges::stable_sort(all, further_left);
  return all;
}

double sum_of(const std::vector<HeadLoad>& loads) {
  return std::accumulate(loads.begin(), loads.end(), 0.0, [](double sum, const HeadLoad& load) {
    return sum + load.characteristic();
  });
}

}  // namespace deadshore::solver
