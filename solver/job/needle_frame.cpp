#include "solver/job/needle_frame.h"

#include <algorithm>
#include <limits>

namespace deadshore::solver {

namespace {

constexpr double standard_gravity = 9.80665;  // m/s2

}  // namespace

double depth_of(const NeedleMember& member) {
  if (const auto* steel = std::get_if<SteelMember>(&member)) return steel->section.h;
  return std::get<TimberMember>(member).section.h;
}

double width_of(const NeedleMember& member) {
  if (const auto* steel = std::get_if<SteelMember>(&member)) return steel->section.b;
  return std::get<TimberMember>(member).section.b;
}

double weight_of(const NeedleMember& member) {
  if (const auto* steel = std::get_if<SteelMember>(&member)) {
    return steel->properties.mass * standard_gravity / 1000.0;
  }
  const auto& timber = std::get<TimberMember>(member);
  return timber.strength_class.rho_mean * standard_gravity * timber.section.area() * 1e-9;
}

double elastic_modulus_of(const NeedleMember& member) {
  if (std::holds_alternative<SteelMember>(member)) return steel_E;
  return std::get<TimberMember>(member).strength_class.E_0_mean;
}

double inertia_of(const NeedleMember& member) {
  if (const auto* steel = std::get_if<SteelMember>(&member)) return steel->properties.I_y;
  return std::get<TimberMember>(member).section.inertia();
}

double place_of(const NeedleProp& prop, double wall_thickness) {
  const double from_middle = 0.5 * wall_thickness + prop.distance;
  return prop.side == PropSide::inside ? from_middle : -from_middle;
}

double extension_of(const NeedleFrame& frame, const NeedleProp& prop, double soffit) {
  const double top = soffit - frame.packing.thickness;
  const double sole = prop.footing.sole.timber.section.h;
  if (prop.action == PropAction::down) return prop.level - sole - top;
  return top - depth_of(frame.member) - sole - prop.level;
}

double length_of(const NeedleFrame& frame, double wall_thickness) {
  double least = std::numeric_limits<double>::infinity();
  double most = -least;
  for (const NeedleProp& prop : frame.props) {
    least = std::min(least, place_of(prop, wall_thickness));
    most = std::max(most, place_of(prop, wall_thickness));
  }
  least = std::min(least, -0.5 * wall_thickness);
  most = std::max(most, 0.5 * wall_thickness);
  return most - least + 2.0 * frame.overhang;
}

std::vector<mesh::Interval> loaded_strips(const NeedleFrame& frame, double wall_thickness) {
  const double outer_face = -0.5 * wall_thickness;
  if (frame.leaves.empty()) return {{outer_face, -outer_face}};
  std::vector<mesh::Interval> strips;
  for (const mesh::Interval& leaf : frame.leaves) {
    strips.push_back({outer_face + leaf.from, outer_face + leaf.to});
  }
  return strips;
}

}  // namespace deadshore::solver
