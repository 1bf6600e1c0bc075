#include "solver/site/removed_masonry.h"

#include "solver/job/beam_places.h"
#include "solver/job/cut.h"
#include "solver/job/job.h"
#include "solver/spread/strips.h"

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

mesh::Interval common(mesh::Interval a, mesh::Interval b) {
  const double from = std::max(a.from, b.from);
  return {from, std::max(from, std::min(a.to, b.to))};
}

double area_of(const mesh::Box& box) {
  return box.x.length() * box.y.length();
}

double area_in_common(const mesh::Box& a, const mesh::Box& b) {
  return area_of({common(a.x, b.x), common(a.y, b.y)});
}

/// Adds where an arch passes through a level.
void add_crossings(const mesh::Opening& arch, double level, std::vector<double>& edges) {
  if (level <= arch.springing() || level >= arch.crown()) return;
  const double half = 0.5 * arch.width;
  const double radius = (half * half + arch.rise * arch.rise) / (2.0 * arch.rise);
  const double above_centre = level - (arch.crown() - radius);
  const double aside = std::sqrt(std::max(0.0, radius * radius - above_centre * above_centre));
  edges.push_back(arch.left + half - aside);
  edges.push_back(arch.left + half + aside);
}

/// Area of an opening inside a box, its segmental head followed.
double area_in_common(const mesh::Opening& opening, const mesh::Box& box) {
  const mesh::Interval x = common(opening.span(), box.x);
  if (x.length() <= 0.0) return 0.0;
  const bool arched = opening.rise > 0.0;
  std::vector<double> edges = {x.from, x.to};
  if (arched) {
    add_crossings(opening, box.y.from, edges);
    add_crossings(opening, box.y.to, edges);
  }
  std::erase_if(edges, [&](double edge) { return !x.contains(edge); });
  std::ranges::sort(edges);
  double area = 0.0;
  for (std::size_t i = 1; i < edges.size(); ++i) {
    for (const Station& station : stations_over({edges[i - 1], edges[i]}, arched)) {
      const mesh::Interval hole{opening.sill, opening.head(station.x)};
      area += station.width * common(hole, box.y).length();
    }
  }
  return area;
}

/// What the cut takes, in boxes.
class CutMasonry {
 public:
  explicit CutMasonry(const Job& job) : job_(job) {}

  /// Area of masonry of the cut inside a box, less openings and lintels.
  [[nodiscard]] double area_in(const mesh::Box& box) const {
    double area = area_of(box);
    for (const mesh::Opening& opening : job_.wall.openings) area -= area_in_common(opening, box);
    for (const Lintel& lintel : job_.lintels) {
      if (!takes_out(job_.wall, lintel.shape)) continue;
      const mesh::LintelExtent extent = mesh::extent_of(lintel.shape, job_.wall);
      area -= area_in_common({extent.x, extent.y}, box);
    }
    return std::max(area, 0.0);
  }

  [[nodiscard]] double weight_of(double area) const {
    return area * job_.thickness * job_.masonry.unit_weight;
  }

  [[nodiscard]] std::vector<RemovedCourse> courses() const {
    const mesh::Cut& cut = job_.wall.cut;
    std::vector<RemovedCourse> courses;
    double top = cut.soffit;
    for (int number = 1; top > mesh::same_place; ++number) {
      double under = cut.soffit - number * job_.removal.course_height;
      if (under < mesh::same_place) under = 0.0;
      const double area = area_in({cut.span(), {under, top}});
      courses.push_back({{under, top}, area, weight_of(area)});
      top = under;
    }
    return courses;
  }

  [[nodiscard]] std::vector<RemovedStrip> strips() const {
    const mesh::Cut& cut = job_.wall.cut;
    std::vector<RemovedStrip> strips;
    double left = cut.left;
    for (int number = 1; left < cut.right - mesh::same_place; ++number) {
      double right = cut.left + number * job_.removal.strip_width;
      if (right > cut.right - mesh::same_place) right = cut.right;
      const double area = area_in({{left, right}, {0.0, cut.soffit}});
      strips.push_back({{left, right}, area, weight_of(area)});
      left = right;
    }
    return strips;
  }

 private:
  const Job& job_;
};

double volume_of(const Job& job, const Lintel& lintel) {
  const mesh::LintelExtent extent = mesh::extent_of(lintel.shape, job.wall);
  return area_of({extent.x, extent.y}) * lintel.thickness;
}

RemovedLintel removed_lintel(const Job& job, LintelId id) {
  const Lintel& lintel = job.lintels[index_of(id)];
  constexpr double rounding = 1e-9;  // a lintel of just what two people lift stays whole
  RemovedLintel removed;
  removed.lintel = id;
  removed.name = lintel.shape.name;
  removed.length = mesh::extent_of(lintel.shape, job.wall).x.length();
  removed.weight = volume_of(job, lintel) * lintel.unit_weight;
  constexpr double most_lifts = 1e6;  // nobody counts further
  const double lifts = std::min(most_lifts, removed.weight / job.removal.two_person_lift);
  removed.pieces = std::max(1, static_cast<int>(std::ceil(lifts * (1.0 - rounding))));
  removed.piece_weight = removed.weight / removed.pieces;
  removed.one_person = removed.piece_weight <= job.removal.one_person_lift * (1.0 + rounding);
  return removed;
}

/// Of the pockets for both ends of the beam, with what the padstones replace, mm3.
double volume_of_pockets(const Job& job) {
  if (!job.beam) return 0.0;
  const BeamPlaces places = places_of_beam(job);
  double area = 0.0;
  for (const mesh::Box& box : places.pockets) area += area_of(box);
  for (const mesh::Box& box : places.padstones) area += area_of(box);
  return area * job.thickness;
}

}  // namespace

RemovedMasonry removed_masonry(const Job& job) {
  const CutMasonry cut(job);
  RemovedMasonry removed;
  removed.courses = cut.courses();
  removed.strips = cut.strips();
  for (const RemovedCourse& course : removed.courses) {
    removed.weight += course.weight;
    removed.solid_volume += course.area * job.thickness;
  }
  for (std::size_t i = 0; i < job.lintels.size(); ++i) {
    const Lintel& lintel = job.lintels[i];
    if (!takes_out(job.wall, lintel.shape)) continue;
    removed.lintels.push_back(removed_lintel(job, LintelId{i}));
    removed.weight += removed.lintels.back().weight;
    removed.solid_volume += volume_of(job, lintel);
  }
  const double pockets = volume_of_pockets(job);
  removed.pockets_weight = pockets * job.masonry.unit_weight;
  removed.weight += removed.pockets_weight;
  removed.solid_volume += pockets;
  removed.loose_volume = job.removal.bulking * removed.solid_volume;
  return removed;
}

}  // namespace deadshore::solver
