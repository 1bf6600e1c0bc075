#include "solver/frame/imperfections.h"

#include <cmath>
#include <cstddef>
#include <utility>

namespace deadshore::solver {

namespace {

struct Direction {
  double x = 0.0;
  double y = 0.0;
};

Direction left_of(const Frame& frame, int member) {
  const FrameMember& ends = frame.members[static_cast<std::size_t>(member)];
  const FrameNode& from = frame.nodes[static_cast<std::size_t>(ends.from)];
  const FrameNode& to = frame.nodes[static_cast<std::size_t>(ends.to)];
  const double length = member_length(frame, member);
  return {-(to.y - from.y) / length, (to.x - from.x) / length};
}

}  // namespace

Frame with_lean(Frame frame, std::span<const int> nodes, double base, double angle) {
  for (const int index : nodes) {
    FrameNode& node = frame.nodes[static_cast<std::size_t>(index)];
    node.x += (node.y - base) * std::tan(angle);
  }
  return frame;
}

Frame with_bow(Frame frame, int member, double bow, int parts) {
  const Direction left = left_of(frame, member);
  const std::size_t first_new = frame.nodes.size();
  frame = with_member_divided(std::move(frame), member, parts);
  for (int i = 1; i < parts; ++i) {
    FrameNode& node = frame.nodes[first_new + static_cast<std::size_t>(i) - 1];
    const double rise = bow * std::sin(M_PI * i / parts);
    node.x += rise * left.x;
    node.y += rise * left.y;
  }
  return frame;
}

FrameNodeLoad eccentric_load(int node, double x, double y, double offset_x, double offset_y) {
  return {node, x, y, offset_x * y - offset_y * x};
}

void add_lean_forces(Frame& frame, int member, double compression, double angle) {
  const FrameMember& ends = frame.members[static_cast<std::size_t>(member)];
  const Direction left = left_of(frame, member);
  const double force = compression * std::tan(angle);
  frame.node_loads.push_back({ends.to, force * left.x, force * left.y, 0.0});
  frame.node_loads.push_back({ends.from, -force * left.x, -force * left.y, 0.0});
}

}  // namespace deadshore::solver
