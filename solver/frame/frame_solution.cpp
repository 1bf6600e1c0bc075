#include "solver/frame/frame_solution.h"

#include "mesh/plane.h"
#include "solver/frame/frame_system.h"
#include "solver/frame/spring_contact.h"
#include "solver/job/error.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>

namespace deadshore::solver {

namespace {

constexpr int samples = 24;      // per stretch without a break, to find the highest hump
constexpr double narrow = 1e-9;  // part of a stretch at which a search ends
constexpr double golden = 0.618033988749894848;
constexpr int most_steps = 40;  // golden^40 is below `narrow`; a short stretch ends by round-off
constexpr int gauss_panels = 8;

// Points and weights on [-1, 1]; Abramowitz & Stegun (1964), table 25.4.
constexpr std::array<double, 5> gauss_point = {-0.906179845938663993, -0.538469310105683091, 0.0,
                                               0.538469310105683091, 0.906179845938663993};
constexpr std::array<double, 5> gauss_weight = {0.236926885056189088, 0.478628670499366468,
                                                0.568888888888888889, 0.478628670499366468,
                                                0.236926885056189088};

/// Places between which everything varies smoothly, `from` and `to` included.
std::vector<double> breaks(const MemberSolution& member, double from, double to) {
  std::vector<double> places = {from};
  for (const LoadOnset& load : member.loads)
    if (load.at > from && load.at < to - mesh::same_place) places.push_back(load.at);
  places = mesh::distinct_places(std::move(places));
  places.push_back(to);
  return places;
}

/// Greatest of sign * quantity over one smooth stretch.
class Summit {
 public:
  Summit(const MemberSolution& member, double SectionState::*quantity, double sign)
      : member_(member), quantity_(quantity), sign_(sign) {}

  [[nodiscard]] double height(const SectionState& state) const { return sign_ * state.*quantity_; }

  [[nodiscard]] SectionState between(double from, double to) const {
    const auto place = [&](int i) { return from + (to - from) * i / samples; };
    SectionState best = section(member_, from, SectionSide::after);
    int at_best = 0;
    for (int i = 1; i <= samples; ++i) {
      const bool last = i == samples;
      const SectionState here =
          section(member_, last ? to : place(i), last ? SectionSide::before : SectionSide::after);
      if (height(here) <= height(best)) continue;
      best = here;
      at_best = i;
    }
    const SectionState peak = climb(place(std::max(at_best - 1, 0)),
                                    place(std::min(at_best + 1, samples)), narrow * (to - from));
    return height(peak) > height(best) ? peak : best;
  }

 private:
  /// Golden-section search.
  [[nodiscard]] SectionState climb(double from, double to, double width) const {
    SectionState low = section(member_, to - golden * (to - from));
    SectionState high = section(member_, from + golden * (to - from));
    for (int step = 0; step < most_steps && to - from > width; ++step) {
      if (height(low) < height(high)) {
        from = low.at;
        low = high;
        high = section(member_, from + golden * (to - from));
      } else {
        to = high.at;
        high = low;
        low = section(member_, to - golden * (to - from));
      }
    }
    return height(low) < height(high) ? high : low;
  }

  const MemberSolution& member_;
  double SectionState::*quantity_;
  double sign_;
};

SectionState highest(const MemberSolution& member, const Summit& summit) {
  const std::vector<double> places = breaks(member, 0.0, member.beam.length);
  // Loads at the very ends: the sections outside them belong to the member too.
  SectionState best = section(member, 0.0, SectionSide::before);
  const SectionState end = section(member, member.beam.length, SectionSide::after);
  if (summit.height(end) > summit.height(best)) best = end;
  for (std::size_t i = 1; i < places.size(); ++i) {
    const SectionState top = summit.between(places[i - 1], places[i]);
    if (summit.height(top) > summit.height(best)) best = top;
  }
  return best;
}

/// The same frame without loads and weight.
Frame unloaded(Frame frame) {
  frame.node_loads.clear();
  frame.line_loads.clear();
  frame.point_loads.clear();
  for (FrameMember& member : frame.members) member.weight = 0.0;
  return frame;
}

void add_unit_load(const NodePattern& pattern, Frame& frame) {
  frame.node_loads.push_back({pattern.node, pattern.x, pattern.y, pattern.rotation});
}

void add_unit_load(const StretchPattern& pattern, Frame& frame) {
  const double length = pattern.to - pattern.from;
  const double x = pattern.x / length;
  const double y = pattern.y / length;
  frame.line_loads.push_back({pattern.member, pattern.from, pattern.to, x, y, x, y});
}

double displacement(const NodePattern& pattern, const Frame&, const FrameSystem&,
                    const Eigen::VectorXd& u) {
  return u.segment<3>(3 * pattern.node)
      .dot(Eigen::Vector3d(pattern.x, pattern.y, pattern.rotation));
}

double displacement(const StretchPattern& pattern, const Frame& frame, const FrameSystem& system,
                    const Eigen::VectorXd& u) {
  const FrameElement& element = system.elements[static_cast<std::size_t>(pattern.member)];
  const BeamState start = element.start_state(system.of_member(frame, pattern.member, u));
  const MemberSolution member{element.beam, start, element.loads, element.direction};
  return mean_displacement(member, pattern.from, pattern.to)
      .dot(Eigen::Vector2d(pattern.x, pattern.y));
}

FrameSystem system_at(const Frame& frame, const FrameSolution& solution) {
  std::vector<double> axial;
  for (const MemberSolution& member : solution.members) axial.push_back(member.beam.axial);
  std::string buckled;
  auto system = assemble(frame, axial, buckled);
  if (!system) throw SolveError(buckled + " buckles under its load");
  return *std::move(system);
}

}  // namespace

std::vector<bool> bearing_springs(const Frame& frame, const FrameSolution& solution) {
  std::vector<bool> closed(frame.springs.size() + frame.rotation_springs.size(), true);
  for (std::size_t i = 0; i < frame.springs.size(); ++i)
    closed[i] = !frame.springs[i].compression_only || solution.spring_forces[i] > 0.0;
  return closed;
}

SectionState section(const MemberSolution& member, double at, SectionSide side) {
  const BeamState state = state_at(member.beam, member.start, member.loads, at, side);
  const Eigen::Vector2d& along = member.direction;
  SectionState result;
  result.at = at;
  result.axial = state.axial;
  result.shear = moment_slope(member.beam, state);
  result.moment = state.moment;
  result.transverse = state.transverse;
  result.x = along.x() * state.along - along.y() * state.across;
  result.y = along.y() * state.along + along.x() * state.across;
  result.deflection = state.across;
  result.rotation = state.rotation;
  return result;
}

Extremes extremes(const MemberSolution& member, double SectionState::*quantity) {
  return {highest(member, Summit(member, quantity, -1.0)),
          highest(member, Summit(member, quantity, 1.0))};
}

Eigen::Vector2d mean_displacement(const MemberSolution& member, double from, double to) {
  const std::vector<double> places = breaks(member, from, to);
  Eigen::Vector2d sum = Eigen::Vector2d::Zero();
  for (std::size_t i = 1; i < places.size(); ++i) {
    const double half = 0.5 * (places[i] - places[i - 1]) / gauss_panels;
    for (int panel = 0; panel < gauss_panels; ++panel) {
      for (std::size_t point = 0; point < gauss_point.size(); ++point) {
        const double at = places[i - 1] + half * (2 * panel + 1 + gauss_point[point]);
        const SectionState here = section(member, at);
        sum += half * gauss_weight[point] * Eigen::Vector2d(here.x, here.y);
      }
    }
  }
  return sum / (to - from);
}

Eigen::MatrixXd flexibility(const Frame& frame, const FrameSolution& solution,
                            std::span<const LoadPattern> patterns) {
  const Frame at_rest = unloaded(frame);
  const auto factor = StiffnessFactor::of(
      free_stiffness(system_at(at_rest, solution), bearing_springs(frame, solution)));
  if (!factor) throw SolveError("the frame cannot carry any further load");

  const auto count = static_cast<Eigen::Index>(patterns.size());
  Eigen::MatrixXd result(count, count);
  for (Eigen::Index j = 0; j < count; ++j) {
    Frame loaded = at_rest;
    std::visit([&](const auto& pattern) { add_unit_load(pattern, loaded); },
               patterns[static_cast<std::size_t>(j)]);
    const FrameSystem system = system_at(loaded, solution);
    Eigen::VectorXd u = Eigen::VectorXd::Zero(system.load.size());
    u(system.free) = factor->solve(system.load(system.free));
    for (Eigen::Index i = 0; i < count; ++i) {
      result(i, j) =
          std::visit([&](const auto& pattern) { return displacement(pattern, loaded, system, u); },
                     patterns[static_cast<std::size_t>(i)]);
    }
  }
  return result;
}

double stiffness(const Frame& frame, const FrameSolution& solution, const LoadPattern& pattern) {
  return 1.0 / flexibility(frame, solution, std::array{pattern})(0, 0);
}

}  // namespace deadshore::solver
