#pragma once

#include "solver/conic/second_order_cone.h"

#include <algorithm>
#include <vector>

namespace deadshore::solver {

/// A slack and its multiplier, both inside one cone. Complementarity is their dot product, 0 at the
/// answer. Scaling and scaled point are as of the last `scale`.
///
/// \tparam Element `Mohr` for the second-order cone, `double` for the half-line x >= 0
template <class Element>
struct ConePair {
  Element slack = unit_of<Element>();       ///< primal
  Element multiplier = unit_of<Element>();  ///< dual
  NesterovTodd<Element> scaling;            ///< W
  Element point = unit_of<Element>();       ///< scaled point: W multiplier = W^-1 slack

  /// Change of the multiplier that, with a change of the slack, meets the linearised
  /// complementarity with right-hand side `target`.
  [[nodiscard]] Element multiplier_change(const Element& target,
                                          const Element& slack_change) const {
    return target - scaling.undo_twice(slack_change);
  }
};

/// One value for each pair of a problem, in the order of `ConePairs`.
struct ConeValues {
  std::vector<Mohr> cones;     ///< of the pairs on second-order cones
  std::vector<double> bounds;  ///< of the pairs on half-lines x >= 0
};

/// A direction in the space of all slacks and multipliers.
struct ConeChanges {
  ConeValues slack;
  ConeValues multiplier;
};

/// All pairs of slack and multiplier of a problem.
struct ConePairs {
  std::vector<ConePair<Mohr>> cones;     ///< on second-order cones
  std::vector<ConePair<double>> bounds;  ///< on half-lines x >= 0

  /// A value of zero for each pair.
  [[nodiscard]] ConeValues zeros() const {
    return {std::vector<Mohr>(cones.size(), Mohr::Zero()), std::vector<double>(bounds.size(), 0.0)};
  }
};

/// Mean complementarity (slack . multiplier) over pairs; the two kinds may have different units. It
/// measures how far from the answer a method is: the duality gap over the number of pairs, where
/// slacks and multipliers are feasible.
struct Complementarity {
  double cones = 0.0;   ///< mean over second-order cones
  double bounds = 0.0;  ///< mean over half-lines
  double all = 0.0;     ///< mean over all pairs
};

/// Step lengths: parts of a direction by which slacks (primal) and multipliers (dual) go.
struct StepLengths {
  double primal = 0.0;  ///< of the slacks and the unknowns
  double dual = 0.0;    ///< of the multipliers

  [[nodiscard]] double shorter() const { return std::min(primal, dual); }

  /// `part` of each plus `more`, at most 1.
  [[nodiscard]] StepLengths times(double part, double more = 0.0) const {
    return {std::min(1.0, part * primal + more), std::min(1.0, part * dual + more)};
  }
};

/// Works out every pair's Nesterov-Todd scaling and scaled point.
void scale(ConePairs& pairs);

// Targets are the right-hand sides t of the linearised complementarity,
// `multiplier change = t - W^-2 (slack change)`: they say what product of slack and multiplier a
// direction aims at.

/// Targets for complementarity 0: the affine-scaling direction, or predictor.
[[nodiscard]] ConeValues affine_targets(const ConePairs& pairs);

/// Targets for complementarity `target`, with the second-order term of the direction `tried`:
/// Mehrotra's corrector.
[[nodiscard]] ConeValues corrected_targets(const ConePairs& pairs, const ConeChanges& tried,
                                           const Complementarity& target);

/// Gondzio's centrality correction: adds to `targets` what keeps products after a step along
/// `tried` between a tenth and ten times `target`.
void add_centring(const ConePairs& pairs, const ConeChanges& tried, const StepLengths& lengths,
                  const Complementarity& target, ConeValues& targets);

/// Longest step lengths that keep all slacks, and all multipliers, in their cones; may be infinite.
[[nodiscard]] StepLengths steps_to_boundary(const ConePairs& pairs, const ConeChanges& changes);

/// Mean complementarity now.
[[nodiscard]] Complementarity complementarity_of(const ConePairs& pairs);
/// Mean complementarity after a step.
[[nodiscard]] Complementarity complementarity_of(const ConePairs& pairs, const ConeChanges& changes,
                                                 const StepLengths& lengths);

/// Takes a step; scalings stay as they are until the next `scale`.
void move(ConePairs& pairs, const ConeChanges& changes, const StepLengths& lengths);

}  // namespace deadshore::solver
