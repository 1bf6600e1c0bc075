#include "solver/stages/beam_result.h"

#include "solver/job/beam_places.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace deadshore::solver {

namespace {

constexpr int even_stations = 80;

struct PointForce {
  double x = 0.0;   ///< mm
  double up = 0.0;  ///< N on the beam
};

/// Shear (up on the left part) and sagging moment at `x`, with the forces at `x` counted in full.
BeamStation station_at(double x, const BeamLine& beam, std::span<const PointForce> forces) {
  BeamStation station;
  station.x = x;
  const double reach = x - beam.x.front();
  station.shear = -beam.weight * reach;
  station.moment = -0.5 * beam.weight * reach * reach;
  for (const PointForce& force : forces) {
    if (force.x > x) continue;
    station.shear += force.up;
    station.moment += force.up * (x - force.x);
  }
  return station;
}

/// Load of the packing at `x`, N/mm: of its nearest point.
double packing_at(const ContactBed* packing, double x, const Eigen::VectorXd& u) {
  if (packing == nullptr || packing->points.empty()) return 0.0;
  const ContactPoint& nearest = *std::ranges::min_element(
      packing->points, {}, [&](const ContactPoint& point) { return std::abs(point.x - x); });
  return nearest.force(u) / nearest.length;
}

/// Fall of the beam at `x` from the line between the middles of its bearings, mm.
class SagLine {
 public:
  SagLine(const BeamLine& beam, mesh::Interval span, const Eigen::VectorXd& u)
      : beam_(beam),
        span_(span),
        u_(u),
        left_(-rise_at(beam, span.from, u)),
        right_(-rise_at(beam, span.to, u)) {}

  [[nodiscard]] double at(double x) const {
    const double along = (x - span_.from) / span_.length();
    return -rise_at(beam_, x, u_) - (left_ + along * (right_ - left_));
  }

 private:
  const BeamLine& beam_;
  mesh::Interval span_;
  const Eigen::VectorXd& u_;
  double left_;
  double right_;
};

std::vector<double> station_places(const BeamLine& beam, std::span<const PointForce> forces) {
  std::vector<double> places;
  const double length = beam.x.back() - beam.x.front();
  for (int i = 0; i <= even_stations; ++i) {
    places.push_back(beam.x.front() + length * i / even_stations);
  }
  for (const PointForce& force : forces) places.push_back(force.x);
  std::ranges::sort(places);
  return places;
}

}  // namespace

BeamResult beam_result_of(const Job& job, const BeamLine& beam, std::span<const ContactBed> beds,
                          const Eigen::VectorXd& u, std::optional<double> packing_age) {
  const PermanentBeam& section = *job.beam;
  BeamResult result;
  std::vector<PointForce> forces;
  const auto collect = [&](const ContactBed* bed, double sign) {
    double sum = 0.0;
    if (bed == nullptr) return sum;
    for (const ContactPoint& point : bed->points) {
      const double force = point.force(u);
      sum += force;
      if (force > 0.0) forces.push_back({point.x, sign * force});
    }
    return sum;
  };
  const ContactBed* packing = find_bed(beds, {BedKind::packing});
  result.reaction_left = collect(find_bed(beds, {BedKind::left_bearing}), 1.0);
  result.reaction_right = collect(find_bed(beds, {BedKind::right_bearing}), 1.0);
  result.from_wall = collect(packing, -1.0);
  if (packing != nullptr) {
    const double width = pressed_width(job);
    for (const ContactPoint& point : packing->points) {
      result.packing_pressure =
          std::max(result.packing_pressure, point.force(u) / (point.length * width));
    }
    result.packing_strength = strength_at(section.packing, *packing_age);
  }
  const mesh::Interval span = places_of_beam(job).supports;
  const SagLine sag(beam, span, u);
  for (const double x : station_places(beam, forces)) {
    BeamStation station = station_at(x, beam, forces);
    station.deflection = -rise_at(beam, x, u);
    station.packing = packing_at(packing, x, u);
    result.largest_moment = std::max(result.largest_moment, std::abs(station.moment));
    result.largest_shear = std::max(result.largest_shear, std::abs(station.shear));
    if (span.contains(x)) result.sag = std::max(result.sag, sag.at(x));
    result.stations.push_back(station);
  }
  return result;
}

}  // namespace deadshore::solver
