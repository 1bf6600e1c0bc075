#pragma once

#include "solver/frame/frame_solution.h"

#include <optional>
#include <string>

namespace deadshore::solver {

/// On which shape equilibrium is set up.
enum class FrameOrder {
  first,   ///< the frame as drawn
  second,  ///< the bent members too: axial forces act on their deflection (P-delta)
};

/// How a frame is solved.
struct FrameOptions {
  FrameOrder order = FrameOrder::first;  ///< first for stiffness, second for strength
  double tolerance = 1e-10;  ///< on the change of axial forces between passes, over the largest
  int most_passes = 50;      ///< of second order
};

/// What a solution came to.
struct FrameReport {
  bool converged = false;  ///< only then is there a solution
  bool unstable = false;   ///< buckles under its loads
  int passes = 0;          ///< solutions with axial forces held; 1 in first order
  int contact_steps = 0;   ///< factorisations in search of the springs that bear
  double change = 0.0;     ///< of axial forces in the last pass, of the largest force
  std::string reason;      ///< in words; empty where converged
};

/// A solution only where there is one to trust.
struct [[nodiscard]] FrameResult {
  FrameReport report;
  std::optional<FrameSolution> solution;  ///< empty unless converged

  /// \throws SolveError with the report's reason if there is no solution
  [[nodiscard]] const FrameSolution& value() const&;
  [[nodiscard]] FrameSolution value() &&;
};

/// Displacements, reactions and member forces of a frame.
///
/// Members are exact (see BeamColumn): one element a member, whatever its loads. Second order is
/// for small displacements: axial forces keep the direction of the straight member, and a member's
/// shortening by bending is neglected. Each pass solves with the axial forces of the last until
/// they agree. Before a solution is accepted the frame is shown to be stable in that state: its
/// stiffness positive, and no member beyond buckling between its own ends.
/// \throws SolveError for values that make no sense, or for a mechanism: the message names the node
///   that can move freely
FrameResult solve(const Frame& frame, const FrameOptions& options = {});

}  // namespace deadshore::solver
