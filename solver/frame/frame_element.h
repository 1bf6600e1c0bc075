#pragma once

#include "solver/frame/beam_column.h"
#include "solver/frame/frame.h"

#include <Eigen/Core>

#include <optional>
#include <vector>

namespace deadshore::solver {

/// A member ready to be assembled, with its loads in local axes and its pins condensed.
struct FrameElement {
  BeamColumn beam;
  Eigen::Vector2d direction;     ///< unit vector along the member, global axes
  std::vector<LoadOnset> loads;  ///< local axes
  EndMatrix end_stiffness;       ///< of the member proper, without pins, local axes
  EndVector end_forces;          ///< that hold the member's clamped ends, local axes

  /// The member's end displacements are `through_pins * node displacements + pin_turns`, local axes
  /// on both sides.
  EndMatrix through_pins;
  EndVector pin_turns;

  /// Rotation from global to local axes.
  [[nodiscard]] EndMatrix axes() const;
  /// Stiffness over the displacements of its two nodes, global axes.
  [[nodiscard]] EndMatrix node_stiffness() const;
  /// Loads on its two nodes that are equivalent to the member's loads, global axes.
  [[nodiscard]] EndVector node_load() const;
  /// State at the member's start.
  /// \param nodes displacements of its two nodes, global axes
  [[nodiscard]] BeamState start_state(const EndVector& nodes) const;
  /// The same by the displacements of its nodes alone, as if the member had no loads.
  [[nodiscard]] BeamState unloaded_start_state(const EndVector& nodes) const;
  /// Mean axial force, given the displacements of its nodes, global axes; tension positive.
  [[nodiscard]] double mean_axial(const EndVector& nodes) const;
};

/// Element of a member that carries the axial force `axial`, for its second-order effect. Empty if
/// the member buckles under it even between nodes that do not move. Where axial loads make the
/// force vary along the member its mean counts; cut the member up to follow it more closely.
/// \throws SolveError if it is pulled so hard that it hangs like a cable
[[nodiscard]] std::optional<FrameElement> frame_element(const Frame& frame, int member,
                                                        double axial);

}  // namespace deadshore::solver
