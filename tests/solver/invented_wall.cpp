#include "tests/solver/invented_wall.h"

#include <algorithm>

namespace deadshore::solver {

Job invented_wall() {
  Job job;
  job.title = "Invented wall";
  job.wall.length = 6000.0;
  job.wall.top = {{0.0, 5200.0}, {6000.0, 5200.0}};
  job.wall.cut = {600.0, 5400.0, 2400.0};
  job.wall.openings = {{"landing window", 900.0, 3300.0, 1100.0, 1250.0, 0.0},
                       {"bedroom window", 3700.0, 3300.0, 1300.0, 1250.0, 0.0}};
  job.thickness = 215.0;
  job.masonry = {"soft brick", 19e-6, 1500.0, 0.2, 2.4, 0.1};
  job.line_loads = {{"floor", 2700.0, false, {0.0, 6000.0}, 4.0, 3.0},
                    {"roof", 5200.0, false, {0.0, 6000.0}, 6.0, 3.0}};
  job.point_loads = {{"purlin", 3000.0, 5000.0, 200.0, 6000.0, 4000.0}};
  job.needles = {{"N1", 1100.0, 152.0, 20000.0, 0.0, 0.0},
                 {"N2", 2400.0, 152.0, 20000.0, 0.0, 0.0},
                 {"N3", 3600.0, 152.0, 20000.0, 0.0, 0.0},
                 {"N4", 4900.0, 152.0, 20000.0, 0.0, 0.0}};
  job.analysis.mesh_size = 100.0;
  job.analysis.element = mesh::QuadOrder::four_node;
  return job;
}

Job mirrored(const Job& job) {
  const double length = job.wall.length;
  const auto flip = [length](mesh::Interval x) {
    return mesh::Interval{length - x.to, length - x.from};
  };
  Job image = job;
  for (mesh::Point& p : image.wall.top) p.x = length - p.x;
  std::reverse(image.wall.top.begin(), image.wall.top.end());
  for (mesh::Opening& opening : image.wall.openings) opening.left = length - opening.right();
  image.wall.cut.left = length - job.wall.cut.right;
  image.wall.cut.right = length - job.wall.cut.left;
  for (LineLoad& load : image.line_loads) load.x = flip(load.x);
  for (PointLoad& load : image.point_loads) load.x = length - load.x;
  for (Needle& needle : image.needles) needle.x = length - needle.x;
  std::reverse(image.needles.begin(), image.needles.end());
  std::swap(image.left_end, image.right_end);
  return image;
}

}  // namespace deadshore::solver
