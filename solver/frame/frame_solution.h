#pragma once

#include "solver/frame/beam_column.h"
#include "solver/frame/frame.h"

#include <Eigen/Core>

#include <string>
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
/// length, after)`. \pre 0 <= at <= length
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

}  // namespace deadshore::solver
