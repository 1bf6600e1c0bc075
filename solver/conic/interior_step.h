#pragma once

#include "solver/conic/cone_pairs.h"

#include <utility>

namespace deadshore::solver {

/// How an interior-point method steps.
struct StepRules {
  /// Part taken of the step length at which a slack or a multiplier would leave its cone. A step
  /// length is at most 1.
  double fraction_to_boundary = 0.95;
  /// Slacks and multipliers go by the same step length: due where the problem's equations tie them
  /// to each other.
  bool one_length = false;
  /// One target complementarity for all pairs; else one for cones and one for bounds, whose
  /// products have different units.
  bool one_target = true;
  double least_centring = 0.0;  ///< least centring parameter: target complementarity over that now
  int most_corrections = 0;     ///< Gondzio's corrections a step, while they lengthen it
  double least_length = 0.0;    ///< a shorter step means that the method is stuck
};

/// Mehrotra's target: the complementarity now times the cube of the part of it that the predictor
/// would leave, which is the centring parameter.
/// \param predicted complementarity after the predictor's step
[[nodiscard]] Complementarity target_after(const Complementarity& now,
                                           const Complementarity& predicted,
                                           const StepRules& rules);

/// Takes one step of a primal-dual interior-point method with Nesterov-Todd directions.
///
/// The problem: minimise a linear or convex quadratic function such that slacks, which are linear
/// in the unknowns, lie in cones. At the answer each slack has a multiplier in the same cone, and
/// the complementarity, the product of the two, is zero. The method keeps both inside the cone and
/// all products near one value, and brings that value to zero: the central path. A step solves for
/// a predictor (target 0), then for a corrector with Mehrotra's target and second-order term (SIAM
/// J. Optim. 2 (1992) 575-601), then for centrality corrections (Gondzio, Comput. Optim. Appl. 6
/// (1996) 137-156).
///
/// The problem itself is a `System`, of which a step asks for:
///
///     ConePairs& pairs();    // slacks and multipliers now
///     bool factorise();      // the equations at the scalings of `pairs`; false where singular
///     Direction direction(const ConeValues& targets);  // the step that meets the targets, with
///                            // the changes of slacks and multipliers in `Direction::cones`
///     void move(const Direction&, const StepLengths&);  // the unknowns; pairs are moved already
///
/// For instance the point x of the cone nearest to `a`, by least |x - a|^2 / 2: x is its own slack
/// and its multiplier is x - a.
/// \code
/// struct NearestPoint {
///   Mohr a;
///   ConePairs all{std::vector<ConePair<Mohr>>(1), {}};  // x = multiplier = (1, 0, 0)
///   Eigen::Matrix3d inverse = Eigen::Matrix3d::Zero();
///
///   struct Direction {
///     ConeChanges cones;
///   };
///   ConePairs& pairs() { return all; }
///   bool factorise() {
///     inverse = all.cones[0].scaling.inverse_with(1.0, 1.0);  // of W^-2 + I
///     return true;
///   }
///   Direction direction(const ConeValues& targets) {
///     const Mohr residual = all.cones[0].slack - a - all.cones[0].multiplier;
///     const Mohr x = inverse * (targets.cones[0] - residual);
///     return {{{{x}, {}}, {{x + residual}, {}}}};
///   }
///   void move(const Direction&, const StepLengths&) {}
/// };
/// \endcode
/// Its steps, with one length since the multiplier is tied to x, lead to the projection of `a`:
/// \code
/// NearestPoint nearest{Mohr(1.0, 3.0, 0.0)};  // eigenvalues 4 and -2
/// const StepRules rules{.one_length = true};
/// while (complementarity_of(nearest.all).all > 1e-12 && interior_step(nearest, rules)) continue;
/// const Mohr x = nearest.all.cones[0].slack;
/// fmt::print("mean {:.3f}, radius {:.3f}\n", x(0), std::hypot(x(1), x(2)));
/// \endcode
///
/// \returns false, without a step, where the equations are singular or the step is too short
template <class System>
[[nodiscard]] bool interior_step(System& system, const StepRules& rules) {
  constexpr double longer = 0.1;       // by which a correction tries to lengthen the step
  constexpr double least_gain = 0.01;  // by which it must
  ConePairs& pairs = system.pairs();
  scale(pairs);
  if (!system.factorise()) return false;
  const auto longest_step = [&](const auto& direction) {
    StepLengths longest = steps_to_boundary(pairs, direction.cones);
    if (rules.one_length) longest.primal = longest.dual = longest.shorter();
    return longest;
  };

  const auto predictor = system.direction(affine_targets(pairs));
  const Complementarity predicted =
      complementarity_of(pairs, predictor.cones, longest_step(predictor).times(1.0));
  const Complementarity target = target_after(complementarity_of(pairs), predicted, rules);

  ConeValues targets = corrected_targets(pairs, predictor.cones, target);
  auto direction = system.direction(targets);
  StepLengths longest = longest_step(direction);
  for (int i = 0; i < rules.most_corrections && longest.shorter() < 1.0; ++i) {
    add_centring(pairs, direction.cones, longest.times(1.0 + longer, longer), target, targets);
    auto better = system.direction(targets);
    const StepLengths further = longest_step(better);
    if (further.shorter() < longest.shorter() + least_gain) break;
    direction = std::move(better);
    longest = further;
  }

  const StepLengths lengths = longest.times(rules.fraction_to_boundary);
  if (!(lengths.shorter() > rules.least_length)) return false;
  move(pairs, direction.cones, lengths);
  system.move(direction, lengths);
  return true;
}

}  // namespace deadshore::solver
