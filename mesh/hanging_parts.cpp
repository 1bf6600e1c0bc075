#include "mesh/hanging_parts.h"

#include "mesh/connected_parts.h"
#include "mesh/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace deadshore::mesh {
namespace {

bool bears(const QuadMesh& mesh, Side side, std::span<const Interval> bearings) {
  const SideNodes along = nodes_along(mesh, side);
  const double a = mesh.nodes[static_cast<std::size_t>(along.nodes[0])].x;
  const double b = mesh.nodes[static_cast<std::size_t>(along.nodes[1])].x;
  return std::ranges::any_of(bearings, [a, b](const Interval& bearing) {
    return std::min(bearing.to, b) - std::max(bearing.from, a) > same_place;
  });
}

/// For each quadrilateral, whether it stands on the base or on a bearing.
std::vector<bool> standing_quads(const QuadMesh& mesh, std::span<const Interval> bearings) {
  std::vector<bool> stands(mesh.region_of_quad.size(), false);
  for (const ChainKind base : {ChainKind::base_left, ChainKind::base_right, ChainKind::base_cut}) {
    for (const Side side : mesh.sides_of(base)) stands[static_cast<std::size_t>(side.quad)] = true;
  }
  for (const Side side : mesh.sides_of(ChainKind::soffit)) {
    if (bears(mesh, side, bearings)) stands[static_cast<std::size_t>(side.quad)] = true;
  }
  return stands;
}

}  // namespace

void refuse_hanging_parts(const QuadMesh& mesh, std::span<const Interval> bearings) {
  const std::vector<bool> stands = standing_quads(mesh, bearings);
  const std::vector<char> all(mesh.region_of_quad.size(), 1);
  for (const std::vector<int>& part : connected_parts(mesh, all)) {
    const auto stands_here = [&stands](int quad) { return stands[static_cast<std::size_t>(quad)]; };
    if (std::ranges::any_of(part, stands_here)) continue;
    const auto [x, y] = box_around(mesh, part);
    throw GeometryError(fmt::format(
        "the wall from x = {:.3f} to {:.3f} m, y = {:.3f} to {:.3f} m hangs on nothing: it touches "
        "neither the base nor a bearing under the soffit",
        x.from / 1000.0, x.to / 1000.0, y.from / 1000.0, y.to / 1000.0));
  }
}

}  // namespace deadshore::mesh
