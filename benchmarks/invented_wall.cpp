#include "benchmarks/invented_wall.h"

#include <cmath>

namespace deadshore::benchmarks {

namespace {

/// Wall less cut and windows, mm2.
double area_of(const mesh::WallShape& wall) {
  double area =
      wall.length * wall.top.front().y - wall.cut.soffit * (wall.cut.right - wall.cut.left);
  for (const mesh::Opening& opening : wall.openings) area -= opening.width * opening.height;
  return area;
}

}  // namespace

solver::Job invented_wall(mesh::QuadOrder element, double unknowns) {
  solver::Job job;
  job.wall.length = 6000.0;
  job.wall.top = {{0.0, 5200.0}, {6000.0, 5200.0}};
  job.wall.cut = {600.0, 5400.0, 2400.0};
  job.wall.openings = {{"left window", 900.0, 3300.0, 1100.0, 1250.0, 0.0},
                       {"right window", 3700.0, 3300.0, 1300.0, 1250.0, 0.0}};
  job.thickness = 215.0;
  job.masonry = {"soft brick", 19e-6, 1500.0, 0.2, 2.4, 0.1};
  job.line_loads = {{"roof", 5200.0, false, {0.0, 6000.0}, 6.0, 3.0}};
  job.needles = {{"N1", 1100.0, 152.0, 20000.0, 0.0, 0.0},
                 {"N2", 2400.0, 152.0, 20000.0, 0.0, 0.0},
                 {"N3", 3600.0, 152.0, 20000.0, 0.0, 0.0},
                 {"N4", 4900.0, 152.0, 20000.0, 0.0, 0.0}};
  job.analysis.element = element;
  const double nodes_per_quad = element == mesh::QuadOrder::four_node ? 1.0 : 3.0;
  job.analysis.mesh_size = std::sqrt(area_of(job.wall) * 2.0 * nodes_per_quad / unknowns);
  return job;
}

}  // namespace deadshore::benchmarks
