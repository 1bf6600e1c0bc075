#include "solver/cracks/cracks.h"

#include "solver/cracks/crack_lines.h"
#include "solver/cracks/crack_place.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>
#include <utility>

namespace deadshore::solver {

namespace {

using mesh::Point;

double length_of(const std::vector<Point>& line) {
  double sum = 0.0;
  for (std::size_t i = 1; i < line.size(); ++i) {
    sum += std::hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y);
  }
  return sum;
}

/// Degrees from level, over -90 to 90.
double angle_from_level(Point along) {
  if (along.x < 0.0) along = {-along.x, -along.y};
  const double degrees = std::atan2(along.y, along.x) * 180.0 / std::numbers::pi;
  return degrees <= -90.0 + 1e-9 ? degrees + 180.0 : degrees;  // upright is always +90
}

Crack crack_from(const Job& job, const CrackLine& line) {
  Crack crack;
  crack.width = line.width;
  crack.length = length_of(line.along);
  crack.widest = line.widest;
  crack.from = line.along.front();
  crack.to = line.along.back();
  if (std::pair(crack.from.y, crack.from.x) > std::pair(crack.to.y, crack.to.x)) {
    std::swap(crack.from, crack.to);  // from its lower end
  }
  const Point chord{crack.to.x - crack.from.x, crack.to.y - crack.from.y};
  const bool has_chord = std::hypot(chord.x, chord.y) > 1.0;
  crack.angle = angle_from_level(has_chord ? chord : Point{-line.normal.y, line.normal.x});
  const double near = std::max(brick_pitch, job.analysis.mesh_size);
  crack.where = place_of_crack(job, crack.from, crack.to, crack.widest, near);
  return crack;
}

}  // namespace

std::vector<Crack> cracks_of(const Job& job, const mesh::QuadMesh& mesh, const PanelFields& fields,
                             double least_width) {
  std::vector<Crack> cracks;
  for (const CrackLine& line : crack_lines(mesh, fields, least_width, most_cracks)) {
    cracks.push_back(crack_from(job, line));
  }
  std::ranges::stable_sort(cracks, std::greater<>{}, &Crack::width);
  return cracks;
}

}  // namespace deadshore::solver
