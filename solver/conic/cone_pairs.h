#pragma once

#include "solver/conic/second_order_cone.h"

#include <algorithm>
#include <vector>

namespace deadshore::solver {

/// A slack and its multiplier, both inside one cone. Scaling and scaled point are as of the last
/// `scale`.
///
/// \tparam Element `Mohr` for the second-order cone, `double` for the half-line x >= 0
template <class Element>
struct ConePair {
  Element slack = unit_of<Element>();
  Element multiplier = unit_of<Element>();
  NesterovTodd<Element> scaling;       ///< W
  Element point = unit_of<Element>();  ///< W multiplier = W^-1 slack

  /// Change of the multiplier that meets a target with a change of the slack.
  [[nodiscard]] Element multiplier_change(const Element& target,
                                          const Element& slack_change) const {
    return target - scaling.undo_twice(slack_change);
  }
};

/// One value for each pair: those on second-order cones ("cones"), those on half-lines ("bounds").
struct ConeValues {
  std::vector<Mohr> cones;
  std::vector<double> bounds;
};
struct ConeChanges {
  ConeValues slack;
  ConeValues multiplier;
};

/// All pairs of a problem.
struct ConePairs {
  std::vector<ConePair<Mohr>> cones;
  std::vector<ConePair<double>> bounds;

  [[nodiscard]] ConeValues zeros() const {
    return {std::vector<Mohr>(cones.size(), Mohr::Zero()), std::vector<double>(bounds.size(), 0.0)};
  }
};

/// Mean complementarity (slack . multiplier) of the cones, of the bounds, and of all pairs; the two
/// kinds may have different units.
struct Complementarity {
  double cones = 0.0;
  double bounds = 0.0;
  double all = 0.0;
};

/// Part of a change by which slacks (primal) and multipliers (dual) go.
struct StepLengths {
  double primal = 0.0;
  double dual = 0.0;

  [[nodiscard]] double shorter() const { return std::min(primal, dual); }

  /// Both times `part` plus `more`, at most 1.
  [[nodiscard]] StepLengths times(double part, double more = 0.0) const {
    return {std::min(1.0, part * primal + more), std::min(1.0, part * dual + more)};
  }
};

/// Works out every pair's Nesterov-Todd scaling.
void scale(ConePairs& pairs);

// Targets: right-hand sides t of the linearised complementarity, `multiplier change = t - W^-2
// (slack change)`.

/// For complementarity 0: the affine-scaling direction.
[[nodiscard]] ConeValues affine_targets(const ConePairs& pairs);

/// For complementarity `target`, with the second-order term of a direction already tried.
[[nodiscard]] ConeValues corrected_targets(const ConePairs& pairs, const ConeChanges& tried,
                                           const Complementarity& target);

/// Adds to `targets` what keeps products after a step along `tried` between a tenth and ten times
/// `target`.
void add_centring(const ConePairs& pairs, const ConeChanges& tried, const StepLengths& lengths,
                  const Complementarity& target, ConeValues& targets);

/// Longest steps that keep all slacks, and all multipliers, in their cones; may be infinite.
[[nodiscard]] StepLengths steps_to_boundary(const ConePairs& pairs, const ConeChanges& changes);

/// As it is, or after a step.
[[nodiscard]] Complementarity complementarity_of(const ConePairs& pairs);
[[nodiscard]] Complementarity complementarity_of(const ConePairs& pairs, const ConeChanges& changes,
                                                 const StepLengths& lengths);

void move(ConePairs& pairs, const ConeChanges& changes, const StepLengths& lengths);

}  // namespace deadshore::solver
