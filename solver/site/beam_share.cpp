#include "solver/site/beam_share.h"

namespace deadshore::solver {

namespace {

BeamShare largest_share(std::span<const double> places, double place, double middle) {
  std::optional<BeamShare> worst;
  for (const double other : places) {
    const bool straddle = (place < middle && other > middle) || (place > middle && other < middle);
    if (!straddle) continue;
    const double part = (other - middle) / (other - place);
    if (!worst || part > worst->part) worst = {part, other};
  }
  return worst.value_or(BeamShare{});
}

}  // namespace

std::vector<BeamShare> largest_shares(std::span<const double> places, double middle) {
  std::vector<BeamShare> shares;
  shares.reserve(places.size());
  for (const double place : places) shares.push_back(largest_share(places, place, middle));
  return shares;
}

}  // namespace deadshore::solver
