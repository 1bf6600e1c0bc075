#include "tests/solver/frame_samples.h"

#include <array>
#include <cmath>
#include <cstddef>

namespace deadshore::solver::testing {

namespace {

/// Adds a force at (x, y) and a moment.
void add(Unbalance& sum, double x, double y, double force_x, double force_y, double moment) {
  sum.x += force_x;
  sum.y += force_y;
  sum.moment += moment + x * force_y - y * force_x;
}

void add_line_load(const Frame& frame, const FrameLineLoad& load, Unbalance& sum) {
  const FrameMember& member = frame.members[static_cast<std::size_t>(load.member)];
  const FrameNode& from = frame.nodes[static_cast<std::size_t>(member.from)];
  const FrameNode& to = frame.nodes[static_cast<std::size_t>(member.to)];
  const double length = member_length(frame, load.member);
  // Simpson's rule, exact for the moment of a linear load.
  constexpr std::array<double, 3> weight = {1.0 / 6.0, 4.0 / 6.0, 1.0 / 6.0};
  for (std::size_t i = 0; i < weight.size(); ++i) {
    const double share = 0.5 * static_cast<double>(i);
    const double at = std::lerp(load.from, load.to, share) / length;
    const double part = weight[i] * (load.to - load.from);
    add(sum, std::lerp(from.x, to.x, at), std::lerp(from.y, to.y, at),
        part * std::lerp(load.x_at_from, load.x_at_to, share),
        part * std::lerp(load.y_at_from, load.y_at_to, share), 0.0);
  }
}

}  // namespace

FrameMember sample_member(int from, int to) {
  FrameMember member;
  member.from = from;
  member.to = to;
  member.E = 210000.0;
  member.A = 5000.0;
  member.I = 4e7;
  return member;
}

FrameMember unshortened_member(int from, int to, double I) {
  FrameMember member = sample_member(from, to);
  member.A = 1e9;
  member.I = I;
  return member;
}

Frame level_beam(std::span<const double> x) {
  Frame frame;
  for (const double place : x) frame.nodes.push_back({place, 0.0, {}});
  for (int i = 1; i < static_cast<int>(x.size()); ++i)
    frame.members.push_back(sample_member(i - 1, i));
  return frame;
}

Frame level_beam(double length) {
  return level_beam(std::array{0.0, length});
}

FrameSupport roller_support(int node) {
  return {node, std::nullopt, 0.0, std::nullopt};
}

FrameSolution second_order(const Frame& frame) {
  return solve(frame, {.order = FrameOrder::second}).value();
}

Frame portal(double l, double h, double k, bool fixed) {
  const double I_post = 4e7;
  Frame frame;
  frame.nodes = {{0.0, 0.0, {}}, {0.0, h, {}}, {l, h, {}}, {l, 0.0, {}}};
  frame.members = {unshortened_member(0, 1, I_post), unshortened_member(1, 2, k * I_post * l / h),
                   unshortened_member(2, 3, I_post)};
  for (const int foot : {0, 3})
    frame.supports.push_back(fixed ? fixed_support(foot) : pinned_support(foot));
  return frame;
}

Unbalance unbalance(const Frame& frame, const FrameSolution& solution) {
  Unbalance sum;
  const auto place = [&](int node) { return frame.nodes[static_cast<std::size_t>(node)]; };
  for (std::size_t i = 0; i < frame.supports.size(); ++i) {
    const FrameNode at = place(frame.supports[i].node);
    const FrameReaction& reaction = solution.reactions[i];
    add(sum, at.x, at.y, reaction.x, reaction.y, reaction.moment);
  }
  for (std::size_t i = 0; i < frame.springs.size(); ++i) {
    const FrameSpring& spring = frame.springs[i];
    if (spring.other != ground) continue;
    const FrameNode at = place(spring.node);
    const double push = -solution.spring_forces[i] / std::hypot(spring.towards_x, spring.towards_y);
    add(sum, at.x, at.y, push * spring.towards_x, push * spring.towards_y, 0.0);
  }
  for (std::size_t i = 0; i < frame.rotation_springs.size(); ++i)
    if (frame.rotation_springs[i].other == ground)
      sum.moment -= solution.rotation_spring_moments[i];
  for (const FrameNodeLoad& load : frame.node_loads) {
    const FrameNode at = place(load.node);
    add(sum, at.x, at.y, load.x, load.y, load.moment);
  }
  for (const FrameLineLoad& load : frame.line_loads) add_line_load(frame, load, sum);
  for (std::size_t i = 0; i < frame.members.size(); ++i)
    if (frame.members[i].weight != 0.0)
      add_line_load(frame, uniform_load(frame, static_cast<int>(i), 0.0, -frame.members[i].weight),
                    sum);
  for (const FramePointLoad& load : frame.point_loads) {
    const FrameMember& member = frame.members[static_cast<std::size_t>(load.member)];
    const double share = load.at / member_length(frame, load.member);
    add(sum, std::lerp(place(member.from).x, place(member.to).x, share),
        std::lerp(place(member.from).y, place(member.to).y, share), load.x, load.y, load.moment);
  }
  return sum;
}

}  // namespace deadshore::solver::testing
