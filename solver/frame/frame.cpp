#include "solver/frame/frame.h"

#include "solver/job/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

namespace deadshore::solver {

namespace {

std::string label(const char* kind, const std::string& name, int index) {
  return name.empty() ? fmt::format("{} {}", kind, index) : fmt::format("'{}'", name);
}

/// A member cut into equal parts: the first keeps its number, the others follow from `next`.
struct Cut {
  int member = 0;
  int next = 0;
  int parts = 1;
  double part_length = 0.0;

  [[nodiscard]] int number(int part) const { return part == 0 ? member : next + part - 1; }
};

void cut_member(const Cut& cut, Frame& frame) {
  const FrameMember whole = frame.members[static_cast<std::size_t>(cut.member)];
  const FrameNode start = frame.nodes[static_cast<std::size_t>(whole.from)];
  const FrameNode end = frame.nodes[static_cast<std::size_t>(whole.to)];
  for (int part = 0; part < cut.parts; ++part) {
    const bool first = part == 0;
    const bool last = part == cut.parts - 1;
    FrameMember piece = whole;
    piece.pin_from = first && whole.pin_from;
    piece.pin_to = last && whole.pin_to;
    if (!first) piece.from = static_cast<int>(frame.nodes.size()) - 1;
    if (!last) {
      const double share = static_cast<double>(part + 1) / cut.parts;
      frame.nodes.push_back(
          {std::lerp(start.x, end.x, share), std::lerp(start.y, end.y, share), {}});
      piece.to = static_cast<int>(frame.nodes.size()) - 1;
    }
    if (first) {
      frame.members[static_cast<std::size_t>(cut.member)] = piece;
    } else {
      frame.members.push_back(piece);
    }
  }
}

void cut_line_load(const Cut& cut, const FrameLineLoad& whole, std::vector<FrameLineLoad>& loads) {
  for (int part = 0; part < cut.parts; ++part) {
    const double offset = part * cut.part_length;
    const double from = std::max(whole.from, offset);
    const double to =
        part == cut.parts - 1 ? whole.to : std::min(whole.to, offset + cut.part_length);
    if (from >= to) continue;
    const double share_from = (from - whole.from) / (whole.to - whole.from);
    const double share_to = (to - whole.from) / (whole.to - whole.from);
    loads.push_back({cut.number(part), from - offset, to - offset,
                     std::lerp(whole.x_at_from, whole.x_at_to, share_from),
                     std::lerp(whole.y_at_from, whole.y_at_to, share_from),
                     std::lerp(whole.x_at_from, whole.x_at_to, share_to),
                     std::lerp(whole.y_at_from, whole.y_at_to, share_to)});
  }
}

void move_to_its_part(const Cut& cut, FramePointLoad& load) {
  const int part = std::clamp(static_cast<int>(load.at / cut.part_length), 0, cut.parts - 1);
  load.at -= part * cut.part_length;
  load.member = cut.number(part);
}

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

FrameSupport pinned_support(int node) {
  return {node, 0.0, 0.0, std::nullopt};
}

FrameSupport fixed_support(int node) {
  return {node, 0.0, 0.0, 0.0};
}

double member_length(const Frame& frame, int member) {
  const FrameMember& ends = frame.members[static_cast<std::size_t>(member)];
  const FrameNode& from = frame.nodes[static_cast<std::size_t>(ends.from)];
  const FrameNode& to = frame.nodes[static_cast<std::size_t>(ends.to)];
  return std::hypot(to.x - from.x, to.y - from.y);
}

FrameLineLoad uniform_load(const Frame& frame, int member, double x, double y) {
  return {member, 0.0, member_length(frame, member), x, y, x, y};
}

std::string node_label(const Frame& frame, int node) {
  return label("node", frame.nodes[static_cast<std::size_t>(node)].name, node);
}

std::string member_label(const Frame& frame, int member) {
  return label("member", frame.members[static_cast<std::size_t>(member)].name, member);
}

Frame with_member_divided(Frame frame, int member, int parts) {
  const Cut cut{member, static_cast<int>(frame.members.size()), parts,
                member_length(frame, member) / parts};
  cut_member(cut, frame);
  std::vector<FrameLineLoad> line_loads;
  for (const FrameLineLoad& load : frame.line_loads) {
    if (load.member == member) {
      cut_line_load(cut, load, line_loads);
    } else {
      line_loads.push_back(load);
    }
  }
  frame.line_loads = std::move(line_loads);
  for (FramePointLoad& load : frame.point_loads)
    if (load.member == member) move_to_its_part(cut, load);
  return frame;
}

Frame divided(Frame frame, int parts) {
  const int members = static_cast<int>(frame.members.size());
  for (int member = 0; member < members; ++member)
    frame = with_member_divided(std::move(frame), member, parts);
  return frame;
}

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
