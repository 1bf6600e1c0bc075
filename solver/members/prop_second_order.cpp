#include "solver/members/prop_second_order.h"

#include "solver/members/steel_member.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace deadshore::solver {

namespace {

constexpr int stations = 100;  // of each piece

/// A piece of the column under a load: distance of the load's line from its axis, z'' = -k^2 z.
struct Piece {
  double k = 0.0;       ///< 1/mm
  double length = 0.0;  ///< mm
  double z = 0.0;       ///< at its start, mm
  double slope = 0.0;   ///< at its start

  [[nodiscard]] double at(double x) const {
    return z * std::cos(k * x) + slope / k * std::sin(k * x);
  }
  [[nodiscard]] double slope_at(double x) const {
    return -z * k * std::sin(k * x) + slope * std::cos(k * x);
  }
};

/// Largest stress of a piece, N/mm2; infinite where it has buckled past its load's line.
double largest_stress(const Piece& piece, const Tube& tube, double load) {
  const double modulus = tube.inertia() / (0.5 * tube.diameter);
  double most = 0.0;
  for (int i = 0; i <= stations; ++i) {
    const double z = piece.at(piece.length * i / stations);
    if (z < 0.0) return std::numeric_limits<double>::infinity();
    most = std::max(most, load / tube.area() + load * z / modulus);
  }
  return most;
}

double stress_under(const Prop& prop, double extension, double eccentricity, double load) {
  const auto wave_number = [&](const Tube& tube) {
    return std::sqrt(load / (steel_E * tube.inertia()));
  };
  Piece outer{wave_number(prop.outer), prop.shortest, eccentricity, 0.0};
  Piece inner{wave_number(prop.inner), extension - prop.shortest, 0.0, 0.0};
  const auto end = [&](double slope) {
    outer.slope = slope;
    inner.z = outer.at(outer.length);
    inner.slope = outer.slope_at(outer.length);
    return inner.at(inner.length);
  };
  const double flat = end(0.0);
  const double for_slope = end(1.0) - flat;
  static_cast<void>(end((eccentricity - flat) / for_slope));
  return std::max(largest_stress(outer, prop.outer, load), largest_stress(inner, prop.inner, load));
}

}  // namespace

double eccentric_strength(const Prop& prop, double extension, double eccentricity) {
  require_within_range(prop, extension);
  double bears = 0.0;
  double yields = prop_yield * std::min(prop.outer.area(), prop.inner.area());
  while (yields - bears > 1.0) {
    const double middle = 0.5 * (bears + yields);
    const bool sound = stress_under(prop, extension, eccentricity, middle) <= prop_yield;
    (sound ? bears : yields) = middle;
  }
  return bears;
}

}  // namespace deadshore::solver
