#include "solver/frame/frame_system.h"

#include "solver/job/error.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <utility>

namespace deadshore::solver {

namespace {

SpringRow row_of(const FrameSpring& spring) {
  const double size = std::hypot(spring.towards_x, spring.towards_y);
  const double x = spring.towards_x / size;
  const double y = spring.towards_y / size;
  SpringRow row{{{3 * spring.node, x}, {3 * spring.node + 1, y}},
                spring.stiffness,
                spring.gap,
                spring.compression_only};
  if (spring.other != ground) {
    row.terms.push_back({3 * spring.other, -x});
    row.terms.push_back({3 * spring.other + 1, -y});
  }
  return row;
}

SpringRow row_of(const FrameRotationSpring& spring) {
  SpringRow row{{{3 * spring.node + 2, 1.0}}, spring.stiffness, 0.0, false};
  if (spring.other != ground) row.terms.push_back({3 * spring.other + 2, -1.0});
  return row;
}

/// The displacements to solve for: without held ones, and without rotations that nothing resists.
class Freedom {
 public:
  explicit Freedom(const Frame& frame)
      : held_(3 * frame.nodes.size(), false), turns_(frame.nodes.size(), false) {
    for (const FrameMember& member : frame.members) {
      if (!member.pin_from) turns_[static_cast<std::size_t>(member.from)] = true;
      if (!member.pin_to) turns_[static_cast<std::size_t>(member.to)] = true;
    }
    for (const FrameRotationSpring& spring : frame.rotation_springs) {
      turns_[static_cast<std::size_t>(spring.node)] = true;
      if (spring.other != ground) turns_[static_cast<std::size_t>(spring.other)] = true;
    }
    for (const FrameSupport& support : frame.supports) {
      const std::size_t first = 3 * static_cast<std::size_t>(support.node);
      if (support.x) held_[first] = true;
      if (support.y) held_[first + 1] = true;
      if (support.rotation) held_[first + 2] = true;
    }
  }

  [[nodiscard]] bool turns(int node) const {
    return turns_[static_cast<std::size_t>(node)] || held_[3 * static_cast<std::size_t>(node) + 2];
  }

  [[nodiscard]] std::vector<int> free() const {
    std::vector<int> result;
    for (std::size_t i = 0; i < held_.size(); ++i)
      if (!held_[i] && (i % 3 != 2 || turns_[i / 3])) result.push_back(static_cast<int>(i));
    return result;
  }

 private:
  std::vector<bool> held_;
  std::vector<bool> turns_;
};

void add_node_loads(const Frame& frame, const Freedom& freedom, Eigen::VectorXd& load) {
  for (const FrameNodeLoad& on_node : frame.node_loads) {
    if (on_node.moment != 0.0 && !freedom.turns(on_node.node)) {
      throw SolveError(fmt::format("a moment acts on {}, where every member is pinned",
                                   node_label(frame, on_node.node)));
    }
    load.segment<3>(3 * on_node.node) += Eigen::Vector3d(on_node.x, on_node.y, on_node.moment);
  }
}

Eigen::VectorXd given_displacements(const Frame& frame) {
  Eigen::VectorXd given = Eigen::VectorXd::Zero(3 * static_cast<Eigen::Index>(frame.nodes.size()));
  for (const FrameSupport& support : frame.supports) {
    if (support.x) given(3 * support.node) = *support.x;
    if (support.y) given(3 * support.node + 1) = *support.y;
    if (support.rotation) given(3 * support.node + 2) = *support.rotation;
  }
  return given;
}

}  // namespace

double SpringRow::closure(const Eigen::VectorXd& u) const {
  double shortening = 0.0;
  for (const Term& term : terms) shortening += term.factor * u(term.displacement);
  return shortening - gap;
}

std::array<int, 6> node_displacements(const FrameMember& member) {
  return {3 * member.from, 3 * member.from + 1, 3 * member.from + 2,
          3 * member.to,   3 * member.to + 1,   3 * member.to + 2};
}

EndVector FrameSystem::of_member(const Frame& frame, int member, const Eigen::VectorXd& u) const {
  return u(node_displacements(frame.members[static_cast<std::size_t>(member)]));
}

std::optional<FrameSystem> assemble(const Frame& frame, const std::vector<double>& axial,
                                    std::string& buckled) {
  const Freedom freedom(frame);
  const Eigen::Index size = 3 * static_cast<Eigen::Index>(frame.nodes.size());
  FrameSystem system;
  system.stiffness.setZero(size, size);
  system.load.setZero(size);
  for (int member = 0; member < static_cast<int>(frame.members.size()); ++member) {
    auto element = frame_element(frame, member, axial[static_cast<std::size_t>(member)]);
    if (!element) {
      buckled = member_label(frame, member);
      return std::nullopt;
    }
    const auto places = node_displacements(frame.members[static_cast<std::size_t>(member)]);
    system.stiffness(places, places) += element->node_stiffness();
    system.load(places) += element->node_load();
    system.elements.push_back(std::move(*element));
  }
  add_node_loads(frame, freedom, system.load);
  for (const FrameSpring& spring : frame.springs) system.springs.push_back(row_of(spring));
  for (const FrameRotationSpring& spring : frame.rotation_springs)
    system.springs.push_back(row_of(spring));
  system.free = freedom.free();
  system.given = given_displacements(frame);
  return system;
}

std::string freest_movement(const Frame& frame, const Eigen::VectorXd& movement) {
  const auto shifts = movement.reshaped(3, movement.size() / 3).topRows<2>();
  Eigen::Index component = 0;
  Eigen::Index node = 0;
  const double shift = shifts.cwiseAbs().maxCoeff(&component, &node);
  Eigen::Index turned = 0;
  const double turn = movement.reshaped(3, movement.size() / 3).row(2).cwiseAbs().maxCoeff(&turned);
  // Where nodes only turn, the shifts are rounding against the turn of a member 1 mm long.
  if (shift <= 1e-6 * turn) return node_label(frame, static_cast<int>(turned)) + " can turn freely";
  return node_label(frame, static_cast<int>(node)) +
         (component == 0 ? " can move sideways freely" : " can move up and down freely");
}

}  // namespace deadshore::solver
