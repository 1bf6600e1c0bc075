#include "viz/wall/stress_field.h"

#include <cmath>
#include <utility>

namespace deadshore::viz {

using solver::PlaneTensor;

StressField::StressField(const mesh::QuadMesh& mesh, std::span<const PlaneTensor> node_stress,
                         std::vector<char> chosen)
    : places_(mesh, std::move(chosen)) {
  if (node_stress.size() == mesh.nodes.size()) stress_ = node_stress;
}

std::optional<PlaneTensor> StressField::at(mesh::Point p) const {
  if (stress_.empty()) return std::nullopt;
  const auto place = places_.at(p);
  if (!place) return std::nullopt;
  PlaneTensor sum;
  for (std::size_t i = 0; i < place->nodes.size(); ++i) {
    const PlaneTensor& here = stress_[static_cast<std::size_t>(place->nodes[i])];
    sum.xx += place->shares[i] * here.xx;
    sum.yy += place->shares[i] * here.yy;
    sum.xy += place->shares[i] * here.xy;
  }
  if (!std::isfinite(sum.xx + sum.yy + sum.xy)) return std::nullopt;
  return sum;
}

}  // namespace deadshore::viz
