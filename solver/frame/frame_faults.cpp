#include "solver/frame/frame.h"
#include "solver/job/error.h"

#include <fmt/format.h>

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

namespace deadshore::solver {

namespace {

void require(bool sound, const std::string& what, const char* rule, double found) {
  if (!sound) throw SolveError(fmt::format("{} must be {}, found {}", what, rule, found));
}

void require_positive(double value, const std::string& what) {
  require(std::isfinite(value) && value > 0.0, what, "above 0", value);
}

void require_finite(double value, const std::string& what) {
  require(std::isfinite(value), what, "a number", value);
}

template <typename Things>
void require_index(int index, const Things& things, const std::string& what) {
  if (index >= 0 && index < static_cast<int>(things.size())) return;
  throw SolveError(
      fmt::format("{} refers to number {}, but there are only {}", what, index, things.size()));
}

void check_members(const Frame& frame) {
  for (int m = 0; m < static_cast<int>(frame.members.size()); ++m) {
    const FrameMember& member = frame.members[static_cast<std::size_t>(m)];
    const std::string label = member_label(frame, m);
    require_index(member.from, frame.nodes, label + ", first node");
    require_index(member.to, frame.nodes, label + ", second node");
    require_positive(member_length(frame, m), label + ": length");
    require_positive(member.E, label + ": E");
    require_positive(member.A, label + ": A");
    require_positive(member.I, label + ": I");
    if (member.shear_stiffness) {
      require_positive(*member.shear_stiffness, label + ": shear stiffness");
    }
    require_finite(member.weight, label + ": weight");
  }
}

void check_springs(const Frame& frame) {
  for (const FrameSpring& spring : frame.springs) {
    require_index(spring.node, frame.nodes, "a spring's node");
    const std::string label = "the spring at " + node_label(frame, spring.node);
    if (spring.other != ground) require_index(spring.other, frame.nodes, label + ", other node");
    require_positive(spring.stiffness, label + ": stiffness");
    require_positive(std::hypot(spring.towards_x, spring.towards_y), label + ": direction");
    require_finite(spring.gap, label + ": gap");
  }
  for (const FrameRotationSpring& spring : frame.rotation_springs) {
    require_index(spring.node, frame.nodes, "a rotation spring's node");
    const std::string label = "the rotation spring at " + node_label(frame, spring.node);
    if (spring.other != ground) require_index(spring.other, frame.nodes, label + ", other node");
    require_positive(spring.stiffness, label + ": stiffness");
  }
}

void check_supports(const Frame& frame) {
  std::vector<bool> held(3 * frame.nodes.size(), false);
  for (const FrameSupport& support : frame.supports) {
    require_index(support.node, frame.nodes, "a support's node");
    const std::string label = node_label(frame, support.node);
    std::size_t place = 3 * static_cast<std::size_t>(support.node);
    for (const auto& given : {support.x, support.y, support.rotation}) {
      require_finite(given.value_or(0.0), "the support at " + label + ": displacement");
      if (given && held[place]) throw SolveError(label + " is held twice in the same direction");
      if (given) held[place] = true;
      ++place;
    }
  }
}

void require_on_member(const Frame& frame, int member, double at) {
  const double length = member_length(frame, member);
  if (at >= 0.0 && at <= length * (1.0 + 1e-9)) return;  // lengths of slopes are rounded
  throw SolveError(fmt::format("a load on {} lies at {} mm, but the member is {} mm long",
                               member_label(frame, member), at, length));
}

void check_loads(const Frame& frame) {
  for (const FrameNodeLoad& load : frame.node_loads) {
    require_index(load.node, frame.nodes, "a load's node");
    for (const double part : {load.x, load.y, load.moment})
      require_finite(part, "the load on " + node_label(frame, load.node));
  }
  for (const FrameLineLoad& load : frame.line_loads) {
    require_index(load.member, frame.members, "a line load's member");
    require_on_member(frame, load.member, load.from);
    require_on_member(frame, load.member, load.to);
    const std::string label = "the line load on " + member_label(frame, load.member);
    require_positive(load.to - load.from, label + ": length");
    for (const double part : {load.x_at_from, load.y_at_from, load.x_at_to, load.y_at_to})
      require_finite(part, label);
  }
  for (const FramePointLoad& load : frame.point_loads) {
    require_index(load.member, frame.members, "a point load's member");
    require_on_member(frame, load.member, load.at);
    for (const double part : {load.x, load.y, load.moment})
      require_finite(part, "the point load on " + member_label(frame, load.member));
  }
}

}  // namespace

void require_sound(const Frame& frame) {
  for (std::size_t i = 0; i < frame.nodes.size(); ++i) {
    const FrameNode& node = frame.nodes[i];
    for (const double part : {node.x, node.y})
      require_finite(part, "the place of " + node_label(frame, static_cast<int>(i)));
  }
  check_members(frame);
  check_supports(frame);
  check_springs(frame);
  check_loads(frame);
}

}  // namespace deadshore::solver
