#pragma once

#include "solver/frame/frame.h"

#include <span>

namespace deadshore::solver {

/// The frame drawn out of plumb: each of `nodes` moves sideways by (its height above `base`) *
/// tan(angle), to the right for a positive angle. For a prop that leans, give the nodes of the prop
/// above its foot, or the foot alone with the head's level as base.
/// \param base level that stays in place, mm
/// \param angle radians
[[nodiscard]] Frame with_lean(Frame frame, std::span<const int> nodes, double base, double angle);

/// The frame with one member drawn bowed: `parts` straight pieces along a half sine wave of
/// rise `bow` (mm) at the middle, to the member's left for a positive bow. The member becomes its
/// first piece; new nodes and members follow the old ones, and its loads go to the pieces, per mm
/// of the straight member.
/// \pre parts >= 2
[[nodiscard]] Frame with_bow(Frame frame, int member, double bow, int parts = 8);

/// A force that acts beside a node as a force and a moment on the node.
/// \param x N, along +x
/// \param y N, along +y
/// \param offset_x where the force acts, mm from the node
/// \param offset_y where the force acts, mm from the node
[[nodiscard]] FrameNodeLoad eccentric_load(int node, double x, double y, double offset_x,
                                           double offset_y);

/// Adds the equivalent forces of a member's lean, in place of moving its nodes: equal and opposite
/// forces across its ends, compression * tan(angle), as if `to` stood further to the member's left.
/// EN 1993-1-1 5.3.2(7), from memory, unverified.
/// \param compression in the member, N, positive
/// \param angle radians
void add_lean_forces(Frame& frame, int member, double compression, double angle);

}  // namespace deadshore::solver
