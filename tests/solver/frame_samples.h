#pragma once

#include "solver/frame/frame.h"
#include "solver/frame/solve_frame.h"

#include <span>
#include <vector>

namespace deadshore::solver::testing {

/// A steel member of an invented size, N and mm: 210000 N/mm2, 5000 mm2, 4e7 mm4.
inline constexpr double sample_EA = 210000.0 * 5000.0;
inline constexpr double sample_EI = 210000.0 * 4e7;
[[nodiscard]] FrameMember sample_member(int from, int to);

/// The same, so stout against shortening that handbook frames, which neglect it, hold to 1e-7.
[[nodiscard]] FrameMember unshortened_member(int from, int to, double I = 4e7);

/// A level beam through nodes at `x`, unsupported: member i runs from node i to node i + 1.
[[nodiscard]] Frame level_beam(std::span<const double> x);
[[nodiscard]] Frame level_beam(double length);

/// Held in y only.
[[nodiscard]] FrameSupport roller_support(int node);

[[nodiscard]] FrameSolution second_order(const Frame& frame);

/// Portal of span `l` and height `h` with its feet at nodes 0 and 3; members: left post (up), beam
/// (rightwards), right post (down). `k` = I_beam / I_post * h / l.
[[nodiscard]] Frame portal(double l, double h, double k, bool fixed);

/// Sum of the loads and reactions in x and y and of their moments about the origin, on the frame as
/// drawn; zero in first order.
struct Unbalance {
  double x = 0.0;
  double y = 0.0;
  double moment = 0.0;
};
[[nodiscard]] Unbalance unbalance(const Frame& frame, const FrameSolution& solution);

}  // namespace deadshore::solver::testing
