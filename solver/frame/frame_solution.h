#pragma once

#include "solver/frame/beam_column.h"
#include "solver/frame/frame.h"

#include <Eigen/Core>

#include <span>
#include <string>
#include <variant>
#include <vector>

namespace deadshore::solver {

/// Displacement of a node.
struct NodeMovement {
  double x = 0.0;         ///< mm
  double y = 0.0;         ///< mm
  double rotation = 0.0;  ///< radians, anticlockwise positive
};

/// What a support gives to the frame; zero in directions that it does not hold.
struct FrameReaction {
  double x = 0.0;       ///< N, along +x
  double y = 0.0;       ///< N, along +y
  double moment = 0.0;  ///< N mm, anticlockwise positive
};

/// What is needed to find the state at any section of a member; see `section`.
struct MemberSolution {
  BeamColumn beam;
  BeamState start;               ///< at its start, local axes
  std::vector<LoadOnset> loads;  ///< local axes
  Eigen::Vector2d direction;     ///< unit vector along the member, global axes
};

/// A frame in equilibrium. Lists follow the frame's own.
struct FrameSolution {
  std::vector<NodeMovement> nodes;              ///< displacements
  std::vector<FrameReaction> reactions;         ///< per support
  std::vector<double> spring_forces;            ///< N, compression positive
  std::vector<double> rotation_spring_moments;  ///< N mm, on `other`, anticlockwise positive
  std::vector<MemberSolution> members;          ///< from which `section` finds forces anywhere
};

/// Which springs bear: one entry for each of the frame's springs, then one for each of its rotation
/// springs, which always do.
[[nodiscard]] std::vector<bool> bearing_springs(const Frame& frame, const FrameSolution& solution);

/// A section of a member; signs as in frame.h.
struct SectionState {
  double at = 0.0;          ///< mm from the member's start
  double axial = 0.0;       ///< N, tension positive
  double shear = 0.0;       ///< N, slope of the moment: across the bent axis (see frame.h)
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

/// Where a quantity is least and where it is greatest along a member.
struct Extremes {
  SectionState least;
  SectionState greatest;
};

/// The sections where a quantity is least and greatest, e.g. `extremes(member,
/// &SectionState::moment)`. Values are exact to round-off, places to about 1e-7 of the length.
[[nodiscard]] Extremes extremes(const MemberSolution& member, double SectionState::*quantity);

/// Mean displacement (x, y) of a stretch of a member, mm: of a needle under a wall's thickness, how
/// far the wall comes down.
/// \pre 0 <= from < to <= length
[[nodiscard]] Eigen::Vector2d mean_displacement(const MemberSolution& member, double from,
                                                double to);

/// A unit load on a node. The displacement that goes with it is the same sum of the node's own.
struct NodePattern {
  int node = 0;
  double x = 0.0;         ///< part of it along +x
  double y = 0.0;         ///< part of it along +y
  double rotation = 0.0;  ///< part of it as a moment, anticlockwise
};

/// A unit load spread evenly over a stretch of a member. The displacement that goes with it is the
/// same sum of the stretch's mean.
struct StretchPattern {
  int member = 0;
  double from = 0.0;  ///< mm along the member
  double to = 0.0;    ///< mm along the member, > from
  double x = 0.0;     ///< part of it along +x
  double y = 0.0;     ///< part of it along +y
};

/// How a further load acts on a frame, for `flexibility` and `stiffness`.
using LoadPattern = std::variant<NodePattern, StretchPattern>;

/// Flexibility matrix over load patterns: entry (i, j) is the displacement of pattern i by a
/// further unit load of pattern j, in mm/N for forces. Symmetric; its inverse is the condensed
/// stiffness. It is the tangent at a solved state: the springs that bear there go on bearing, and
/// in second order its axial forces are held. (Where they should grow with the load, take the
/// secant: load over mean displacement.)
/// \throws SolveError if the frame cannot carry any further load
[[nodiscard]] Eigen::MatrixXd flexibility(const Frame& frame, const FrameSolution& solution,
                                          std::span<const LoadPattern> patterns);

/// Stiffness to one pattern alone, N/mm: one over its flexibility.
[[nodiscard]] double stiffness(const Frame& frame, const FrameSolution& solution,
                               const LoadPattern& pattern);

}  // namespace deadshore::solver
