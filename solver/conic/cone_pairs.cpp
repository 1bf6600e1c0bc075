#include "solver/conic/cone_pairs.h"

#include <algorithm>
#include <cstddef>
#include <limits>

namespace deadshore::solver {

namespace {

// Gondzio's choice: products are kept between these multiples of the target.
constexpr double least_product = 0.1;
constexpr double most_product = 10.0;

/// Calls `work(pair, of)` for each pair in turn, where `of(values)` is its entry of ConeValues.
template <class Pairs, class Work>
void in_turn(Pairs& pairs, const Work& work) {
  for (std::size_t i = 0; i < pairs.cones.size(); ++i) {
    work(
        pairs.cones[i], [i](auto& values) -> auto& { return values.cones[i]; });
  }
  for (std::size_t i = 0; i < pairs.bounds.size(); ++i) {
    work(
        pairs.bounds[i], [i](auto& values) -> auto& { return values.bounds[i]; });
  }
}

/// The same by several threads: for work that keeps to its own pair.
template <class Pairs, class Work>
void at_once(Pairs& pairs, const Work& work) {
  const std::size_t cones = pairs.cones.size();
#pragma omp parallel for schedule(static) if (cones > 1000)
  for (std::size_t i = 0; i < cones; ++i) {
    work(
        pairs.cones[i], [i](auto& values) -> auto& { return values.cones[i]; });
  }
  for (std::size_t i = 0; i < pairs.bounds.size(); ++i) {
    work(
        pairs.bounds[i], [i](auto& values) -> auto& { return values.bounds[i]; });
  }
}

double of_kind(const Complementarity& target, const ConePair<Mohr>&) {
  return target.cones;
}
double of_kind(const Complementarity& target, const ConePair<double>&) {
  return target.bounds;
}

double mean(double sum, std::size_t count) {
  return count > 0 ? sum / static_cast<double>(count) : 0.0;
}

}  // namespace

void scale(ConePairs& pairs) {
  at_once(pairs, [](auto& pair, auto) {
    pair.scaling = {pair.slack, pair.multiplier};
    pair.point = pair.scaling.apply(pair.multiplier);
  });
}

ConeValues affine_targets(const ConePairs& pairs) {
  ConeValues targets = pairs.zeros();
  at_once(pairs, [&](const auto& pair, auto of) { of(targets) = -pair.multiplier; });
  return targets;
}

ConeValues corrected_targets(const ConePairs& pairs, const ConeChanges& tried,
                             const Complementarity& target) {
  ConeValues targets = pairs.zeros();
  at_once(pairs, [&]<class Element>(const ConePair<Element>& pair, auto of) {
    const Element second_order = jordan_product(pair.scaling.undo(of(tried.slack)),
                                                pair.scaling.apply(of(tried.multiplier)));
    const Element wanted = of_kind(target, pair) * unit_of<Element>() - second_order;
    of(targets) = pair.scaling.undo(jordan_quotient(wanted, pair.point)) - pair.multiplier;
  });
  return targets;
}

void add_centring(const ConePairs& pairs, const ConeChanges& tried, const StepLengths& lengths,
                  const Complementarity& target, ConeValues& targets) {
  at_once(pairs, [&]<class Element>(const ConePair<Element>& pair, auto of) {
    const Element slack = pair.point + lengths.primal * pair.scaling.undo(of(tried.slack));
    const Element multiplier = pair.point + lengths.dual * pair.scaling.apply(of(tried.multiplier));
    const Element product = jordan_product(slack, multiplier);
    const double mu = of_kind(target, pair);
    const Element missing = clamped(product, least_product * mu, most_product * mu) - product;
    const Element wanted = clamped(missing, -most_product * mu, std::numeric_limits<double>::max());
    of(targets) += pair.scaling.undo(jordan_quotient(wanted, pair.point));
  });
}

StepLengths steps_to_boundary(const ConePairs& pairs, const ConeChanges& changes) {
  constexpr double infinite = std::numeric_limits<double>::infinity();
  StepLengths longest{infinite, infinite};
  in_turn(pairs, [&](const auto& pair, auto of) {
    longest.primal = std::min(longest.primal, largest_step(pair.slack, of(changes.slack)));
    longest.dual = std::min(longest.dual, largest_step(pair.multiplier, of(changes.multiplier)));
  });
  return longest;
}

Complementarity complementarity_of(const ConePairs& pairs) {
  return complementarity_of(pairs, {pairs.zeros(), pairs.zeros()}, {});
}

Complementarity complementarity_of(const ConePairs& pairs, const ConeChanges& changes,
                                   const StepLengths& lengths) {
  double cones = 0.0;
  double bounds = 0.0;
  in_turn(pairs, [&]<class Element>(const ConePair<Element>& pair, auto of) {
    const Element slack = pair.slack + lengths.primal * of(changes.slack);
    const Element multiplier = pair.multiplier + lengths.dual * of(changes.multiplier);
    (std::is_same_v<Element, double> ? bounds : cones) += dot(slack, multiplier);
  });
  return {mean(cones, pairs.cones.size()), mean(bounds, pairs.bounds.size()),
          mean(cones + bounds, pairs.cones.size() + pairs.bounds.size())};
}

void move(ConePairs& pairs, const ConeChanges& changes, const StepLengths& lengths) {
  at_once(pairs, [&](auto& pair, auto of) {
    pair.slack += lengths.primal * of(changes.slack);
    pair.multiplier += lengths.dual * of(changes.multiplier);
  });
}

}  // namespace deadshore::solver
