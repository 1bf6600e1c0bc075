#pragma once

#include "solver/frame/frame_solution.h"

#include <Eigen/Core>

#include <span>
#include <variant>

namespace deadshore::solver {

/// A unit load on a node: parts in x, y and moment; its displacement is the same sum of the node's.
struct NodePattern {
  int node = 0;
  double x = 0.0;
  double y = 0.0;
  double rotation = 0.0;
};

/// A unit load spread evenly over a stretch of a member, with parts in x and y; its displacement is
/// the stretch's mean.
struct StretchPattern {
  int member = 0;
  double from = 0.0;  ///< mm along the member
  double to = 0.0;
  double x = 0.0;
  double y = 0.0;
};

using LoadPattern = std::variant<NodePattern, StretchPattern>;

/// Displacement of pattern i by a further unit load of pattern j, in mm/N for forces: the frame
/// condensed to what loads it. Symmetric; its inverse is the stiffness there. Taken at a solved
/// state: the springs that bear there, and in second order its axial forces, which are held (a
/// second-order stiffness that follows them is the load over its mean displacement). \throws
/// SolveError if the frame cannot carry any further load
[[nodiscard]] Eigen::MatrixXd flexibility(const Frame& frame, const FrameSolution& solution,
                                          std::span<const LoadPattern> patterns);

/// Stiffness to one pattern alone, N/mm: under a wall, the load on the needle over its mean
/// displacement across the wall's thickness.
[[nodiscard]] double stiffness(const Frame& frame, const FrameSolution& solution,
                               const LoadPattern& pattern);

}  // namespace deadshore::solver
