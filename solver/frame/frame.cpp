#include "solver/frame/frame.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

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

}  // namespace deadshore::solver
