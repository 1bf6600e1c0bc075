#include "solver/frame/frame_element.h"

#include "solver/fem/dense_symmetric.h"
#include "solver/job/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

namespace deadshore::solver {

namespace {

constexpr double cable_limit = 15.0;  // sqrt(N / (E I)) L; sections lose about exp(this) eps
constexpr double least_pin_stiffness = 1e-10;  // part of 4 E I / L at which a pinned member buckles

/// Loads of a member turned into its local axes.
class LocalLoads {
 public:
  LocalLoads(double length, const Eigen::Vector2d& direction)
      : length_(length), along_(direction), across_(-direction.y(), direction.x()) {}

  void add(const FrameLineLoad& load) {
    const double from = std::clamp(load.from, 0.0, length_);
    const double to = std::clamp(load.to, 0.0, length_);
    const Eigen::Vector2d first = local(load.x_at_from, load.y_at_from);
    const Eigen::Vector2d last = local(load.x_at_to, load.y_at_to);
    const Eigen::Vector2d growth = (last - first) / (load.to - load.from);
    loads_.push_back({from, Eigen::Vector2d::Zero(), first, growth, 0.0});
    loads_.push_back({to, Eigen::Vector2d::Zero(), -last, -growth, 0.0});
  }

  void add(const FramePointLoad& load) {
    loads_.push_back({std::clamp(load.at, 0.0, length_), local(load.x, load.y),
                      Eigen::Vector2d::Zero(), Eigen::Vector2d::Zero(), load.moment});
  }

  [[nodiscard]] std::vector<LoadOnset> take() { return std::move(loads_); }

 private:
  [[nodiscard]] Eigen::Vector2d local(double x, double y) const {
    const Eigen::Vector2d global(x, y);
    return {along_.dot(global), across_.dot(global)};
  }

  double length_;
  Eigen::Vector2d along_;
  Eigen::Vector2d across_;
  std::vector<LoadOnset> loads_;
};

std::vector<LoadOnset> loads_of(const Frame& frame, int member, double length,
                                const Eigen::Vector2d& direction) {
  LocalLoads loads(length, direction);
  const double weight = frame.members[static_cast<std::size_t>(member)].weight;
  if (weight != 0.0) loads.add(uniform_load(frame, member, 0.0, -weight));
  for (const FrameLineLoad& load : frame.line_loads)
    if (load.member == member) loads.add(load);
  for (const FramePointLoad& load : frame.point_loads)
    if (load.member == member) loads.add(load);
  return loads.take();
}

BeamState start_from(const EndVector& ends, const EndVector& forces) {
  return {ends(0), ends(1), ends(2), -forces(0), forces(1), -forces(2)};
}

/// Condenses the rotations at the member's pins; false if it buckles between its pins.
bool release(const FrameMember& member, FrameElement& element) {
  std::vector<int> pins;
  if (member.pin_from) pins.push_back(2);
  if (member.pin_to) pins.push_back(5);
  element.through_pins.setIdentity();
  element.pin_turns.setZero();
  if (pins.empty()) return true;
  const auto factor = DenseCholesky::of(element.end_stiffness(pins, pins));
  const double least = least_pin_stiffness * 4.0 * element.beam.EI / element.beam.length;
  if (!factor || factor->least_pivot() <= least) return false;
  const auto turns_of = [&](const EndVector& moments) -> Eigen::VectorXd {
    return -factor->solve(moments(pins));
  };
  for (int node = 0; node < 6; ++node)
    element.through_pins.col(node)(pins) = turns_of(element.end_stiffness.col(node));
  element.pin_turns(pins) = turns_of(element.end_forces);
  for (const int pin : pins) element.through_pins.col(pin).setZero();
  return true;
}

}  // namespace

EndMatrix FrameElement::axes() const {
  EndMatrix axes = EndMatrix::Zero();
  for (const int corner : {0, 3}) {
    axes.block<2, 2>(corner, corner) << direction.x(), direction.y(), -direction.y(), direction.x();
    axes(corner + 2, corner + 2) = 1.0;
  }
  return axes;
}

EndMatrix FrameElement::node_stiffness() const {
  const EndMatrix to_local = through_pins * axes();
  return to_local.transpose() * end_stiffness * to_local;
}

EndVector FrameElement::node_load() const {
  return -(through_pins * axes()).transpose() * end_forces;
}

BeamState FrameElement::start_state(const EndVector& nodes) const {
  const EndVector ends = through_pins * axes() * nodes + pin_turns;
  return start_from(ends, end_stiffness * ends + end_forces);
}

BeamState FrameElement::unloaded_start_state(const EndVector& nodes) const {
  const EndVector ends = through_pins * axes() * nodes;
  return start_from(ends, end_stiffness * ends);
}

double FrameElement::mean_axial(const EndVector& nodes) const {
  return beam.EA / beam.length * direction.dot(nodes.segment<2>(3) - nodes.segment<2>(0));
}

std::optional<FrameElement> frame_element(const Frame& frame, int member, double axial) {
  const FrameMember& properties = frame.members[static_cast<std::size_t>(member)];
  const FrameNode& from = frame.nodes[static_cast<std::size_t>(properties.from)];
  const FrameNode& to = frame.nodes[static_cast<std::size_t>(properties.to)];
  const double length = member_length(frame, member);
  FrameElement element;
  element.direction = Eigen::Vector2d(to.x - from.x, to.y - from.y) / length;
  element.beam = {length, properties.E * properties.A, properties.E * properties.I,
                  properties.shear_stiffness ? 1.0 / *properties.shear_stiffness : 0.0, axial};
  if (axial > 0.0 && std::sqrt(axial / element.beam.EI) * length > cable_limit) {
    throw SolveError(fmt::format(
        "{} is so slender for its pull of {:.1f} kN that it hangs like a cable: divide it",
        member_label(frame, member), axial / 1000.0));
  }
  if (!stable_between_clamps(element.beam)) return std::nullopt;
  element.loads = loads_of(frame, member, length, element.direction);
  element.end_stiffness = end_stiffness(element.beam);
  element.end_forces = clamped_end_forces(element.beam, element.loads);
  if (!release(properties, element)) return std::nullopt;
  return element;
}

}  // namespace deadshore::solver
