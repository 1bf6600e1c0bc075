#include "solver/frame/frame_flexibility.h"

#include "solver/frame/frame_system.h"
#include "solver/frame/spring_contact.h"
#include "solver/job/error.h"

#include <array>
#include <cstddef>
#include <string>

namespace deadshore::solver {

namespace {

/// The frame at rest: nothing acts on it.
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
