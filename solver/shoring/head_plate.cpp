#include "solver/shoring/head_plate.h"

#include "solver/frame/solve_frame.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <variant>

namespace deadshore::solver {

namespace {

constexpr double same_place = 0.5;    // mm
constexpr double unyielding = 1e7;    // stiffness of a rigid support, over E I / shortest bay^3
constexpr int stations_per_bay = 16;  // at which deflection is looked at

/// The plate as a frame, its supports in order as the springs.
struct PlateFrame {
  Frame frame;
  std::vector<int> support_nodes;
};

std::vector<double> nodes_of(const HeadPlate& plate) {
  std::vector<double> places = {plate.x.from, plate.x.to};
  // A support at an end is that end, so that no member is without length.
  for (const PlateSupport& support : plate.supports) {
    if (support.x - plate.x.from > same_place && plate.x.to - support.x > same_place)
      places.push_back(support.x);
  }
  std::ranges::sort(places);
  return places;
}

int nearest_node(const Frame& frame, double x) {
  const auto nearest = std::ranges::min_element(
      frame.nodes, {}, [x](const FrameNode& node) { return std::abs(node.x - x); });
  return static_cast<int>(nearest - frame.nodes.begin());
}

double stiffness_of_unyielding(const HeadPlate& plate) {
  double shortest = plate.x.length();
  for (std::size_t i = 1; i < plate.supports.size(); ++i)
    shortest = std::min(shortest, plate.supports[i].x - plate.supports[i - 1].x);
  return unyielding * plate.E * plate.I / (shortest * shortest * shortest);
}

void add_supports(const HeadPlate& plate, PlateFrame& assembled) {
  Frame& frame = assembled.frame;
  const double rigid = stiffness_of_unyielding(plate);
  for (const PlateSupport& support : plate.supports) {
    FrameSpring spring;
    spring.node = nearest_node(frame, support.x);
    spring.stiffness = support.stiffness.value_or(rigid);
    spring.compression_only = true;
    frame.springs.push_back(spring);
    assembled.support_nodes.push_back(spring.node);
  }
  FrameSupport held;
  held.node = 0;
  held.x = 0.0;
  frame.supports.push_back(held);
}

void add_force(const PlateForce& force, Frame& frame) {
  const int node = nearest_node(frame, force.x);
  if (std::abs(frame.nodes[static_cast<std::size_t>(node)].x - force.x) <= same_place) {
    frame.node_loads.push_back({node, 0.0, -force.force, 0.0});
    return;
  }
  const auto after =
      std::ranges::find_if(frame.nodes, [&](const FrameNode& other) { return other.x > force.x; });
  const int member = static_cast<int>(after - frame.nodes.begin()) - 1;
  const double start = frame.nodes[static_cast<std::size_t>(member)].x;
  frame.point_loads.push_back({member, force.x - start, 0.0, -force.force, 0.0});
}

PlateFrame assemble_plate(const HeadPlate& plate, std::span<const PlateForce> forces) {
  PlateFrame assembled;
  Frame& frame = assembled.frame;
  for (const double x : nodes_of(plate)) {
    const int node = static_cast<int>(frame.nodes.size());
    frame.nodes.push_back({x, 0.0, "head plate"});
    if (node == 0) continue;
    FrameMember member;
    member.from = node - 1;
    member.to = node;
    member.E = plate.E;
    member.A = plate.A;
    member.I = plate.I;
    member.shear_stiffness = plate.shear_stiffness;
    member.weight = plate.weight;
    member.name = "head plate";
    frame.members.push_back(member);
  }
  add_supports(plate, assembled);
  for (const PlateForce& force : forces) add_force(force, frame);
  return assembled;
}

/// Largest distance of a member from the line between its ends; for an end beyond a support, from
/// the level of that support.
double deflection_of(const MemberSolution& member, bool first_end, bool last_end) {
  const double length = member.beam.length;
  const double at_start = section(member, 0.0).y;
  const double at_end = section(member, length, SectionSide::before).y;
  if (first_end) return std::abs(at_start - at_end);
  if (last_end) return std::abs(at_end - at_start);
  double most = 0.0;
  for (int i = 1; i < stations_per_bay; ++i) {
    const double share = static_cast<double>(i) / stations_per_bay;
    const double y = section(member, share * length).y;
    most = std::max(most, std::abs(y - std::lerp(at_start, at_end, share)));
  }
  return most;
}

void add_deflection(const PlateFrame& assembled, const FrameSolution& solution,
                    PlateAnswer& answer) {
  double worst = -1.0;
  const int first = assembled.support_nodes.front();
  const int last = assembled.support_nodes.back();
  for (std::size_t m = 0; m < solution.members.size(); ++m) {
    const int start = static_cast<int>(m);
    const bool first_end = start < first;
    const bool last_end = start >= last;
    const double length = solution.members[m].beam.length;
    const double span = first_end || last_end ? 2.0 * length : length;
    const double deflection = deflection_of(solution.members[m], first_end, last_end);
    if (deflection / span <= worst) continue;
    worst = deflection / span;
    answer.deflection = deflection;
    answer.deflection_span = span;
  }
}

/// Moment and shear force between one force and the next, where they follow the even load's
/// parabola exactly: the general search of `extremes` would take most of the time of a design.
void add_forces(const Frame& frame, std::size_t index, const MemberSolution& member,
                PlateAnswer& answer) {
  std::vector<double> places = {0.0, member.beam.length};
  for (const FramePointLoad& load : frame.point_loads)
    if (static_cast<std::size_t>(load.member) == index) places.push_back(load.at);
  std::ranges::sort(places);
  const double w = frame.members[index].weight;
  const auto keep = [&](double moment) {
    answer.sagging = std::max(answer.sagging, moment);
    answer.hogging = std::max(answer.hogging, -moment);
  };
  for (std::size_t i = 1; i < places.size(); ++i) {
    const SectionState start = section(member, places[i - 1], SectionSide::after);
    const SectionState end = section(member, places[i], SectionSide::before);
    keep(start.moment);
    keep(end.moment);
    if (w > 0.0 && start.shear > 0.0 && end.shear < 0.0)  // a peak between
      keep(start.moment + 0.5 * start.shear * start.shear / w);
    answer.largest_shear =
        std::max({answer.largest_shear, std::abs(start.shear), std::abs(end.shear)});
  }
}

}  // namespace

HeadPlate head_plate_of(const NeedleMember& member, mesh::Interval x, double weight_factor) {
  HeadPlate plate;
  plate.x = x;
  plate.E = elastic_modulus_of(member);
  plate.I = inertia_of(member);
  plate.weight = weight_factor * weight_of(member);
  if (const auto* steel = std::get_if<SteelMember>(&member)) {
    plate.A = steel->properties.A;
    plate.shear_stiffness = steel_G * steel->properties.A_v;
  } else {
    const auto& timber = std::get<TimberMember>(member);
    plate.A = timber.section.area();
    plate.shear_stiffness = timber.strength_class.G_mean * timber.section.area() / 1.2;
  }
  return plate;
}

PlateAnswer analyse_head_plate(const HeadPlate& plate, std::span<const PlateForce> forces) {
  const PlateFrame assembled = assemble_plate(plate, forces);
  const FrameSolution solution = solve(assembled.frame).value();
  PlateAnswer answer;
  answer.reactions = solution.spring_forces;
  const auto moment_at = [&](int node) {
    const bool last = static_cast<std::size_t>(node) == solution.members.size();
    const MemberSolution& member =
        solution.members[static_cast<std::size_t>(last ? node - 1 : node)];
    return last ? section(member, member.beam.length, SectionSide::before).moment
                : section(member, 0.0).moment;
  };
  for (const int node : assembled.support_nodes) answer.over_support.push_back(moment_at(node));
  for (std::size_t m = 0; m < solution.members.size(); ++m)
    add_forces(assembled.frame, m, solution.members[m], answer);
  add_deflection(assembled, solution, answer);
  return answer;
}

}  // namespace deadshore::solver
