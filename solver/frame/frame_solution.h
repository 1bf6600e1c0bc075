#pragma once

#include "solver/frame/beam_column.h"
#include "solver/frame/frame.h"

#include <Eigen/Core>

#include <span>
#include <string>
#include <variant>
#include <vector>

namespace deadshore::solver {

/// Displacement of a node: mm, mm, radians.
struct NodeMovement {
  double x = 0.0;
  double y = 0.0;
  double rotation = 0.0;
};

/// What a support gives to the frame, N and N mm; zero in directions it does not hold.
struct FrameReaction {
  double x = 0.0;
  double y = 0.0;
  double moment = 0.0;
};

/// What is needed to find the state at any section of a member.
struct MemberSolution {
  BeamColumn beam;
  BeamState start;
  std::vector<LoadOnset> loads;
  Eigen::Vector2d direction;  ///< unit vector along the member
};

/// A frame in equilibrium. Lists follow the frame's own.
struct FrameSolution {
  std::vector<NodeMovement> nodes;
  std::vector<FrameReaction> reactions;         ///< per support
  std::vector<double> spring_forces;            ///< N, compression positive
  std::vector<double> rotation_spring_moments;  ///< N mm, on `other`, anticlockwise positive
  std::vector<MemberSolution> members;
};

/// Which of the frame's springs bear, then its rotation springs, which always do.
[[nodiscard]] std::vector<bool> bearing_springs(const Frame& frame, const FrameSolution& solution);

/// A section of a member; signs as in frame.h.
struct SectionState {
  double at = 0.0;          ///< mm from the member's start
  double axial = 0.0;       ///< N, tension positive
  double shear = 0.0;       ///< N, slope of the moment: across the bent axis
  double moment = 0.0;      ///< N mm
  double transverse = 0.0;  ///< N, across the straight axis; equals `shear` in first order
  double x = 0.0;           ///< displacement, mm
  double y = 0.0;           ///< displacement, mm
  double deflection = 0.0;  ///< displacement across the member, mm, to its left positive
  double rotation = 0.0;    ///< radians
};

/// Exact state at `at` mm along a member, just before or after any load that begins there. The
/// forces on a member's ends are those of `section(member, 0, before)` and `section(member,
/// length, after)`.
/// \pre 0 <= at <= length
[[nodiscard]] SectionState section(const MemberSolution& member, double at,
                                   SectionSide side = SectionSide::after);

struct Extremes {
  SectionState least;
  SectionState greatest;
};

/// The sections where a quantity is least and greatest, e.g. `extremes(member,
/// &SectionState::moment)`. Values are exact to rounding, places to about 1e-7 of the length.
[[nodiscard]] Extremes extremes(const MemberSolution& member, double SectionState::*quantity);

/// Mean displacement of a stretch of a member, mm: the weight over a wall's thickness.
/// \pre 0 <= from < to <= length
[[nodiscard]] Eigen::Vector2d mean_displacement(const MemberSolution& member, double from,
                                                double to);

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
/// second-order stiffness that follows them is the load over its mean displacement).
/// \throws SolveError if the frame cannot carry any further load
[[nodiscard]] Eigen::MatrixXd flexibility(const Frame& frame, const FrameSolution& solution,
                                          std::span<const LoadPattern> patterns);

/// Stiffness to one pattern alone, N/mm: under a wall, the load on the needle over its mean
/// displacement across the wall's thickness.
[[nodiscard]] double stiffness(const Frame& frame, const FrameSolution& solution,
                               const LoadPattern& pattern);

}  // namespace deadshore::solver
