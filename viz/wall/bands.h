#pragma once

#include "mesh/quad_mesh.h"
#include "solver/result/results.h"
#include "viz/page/palette.h"
#include "viz/wall/region.h"

#include <span>
#include <string>
#include <vector>

/// Principal compression as bands, for every figure that shows it.
namespace deadshore::viz {

/// Even steps from 0: bands [0, step), [step, 2 step), ... and above `count * step`.
struct BandScale {
  double step = 0.0;
  int count = 0;  ///< bands below the open one at the top

  [[nodiscard]] double upper() const { return step * count; }
};

/// A scale of five to eight steps, each 1, 2, 2.5 or 5 times a power of ten, that reaches `value`.
/// For a value that is not positive and finite, one step of 1.
[[nodiscard]] BandScale even_scale(double value);

/// The whole mesh, then the part where a value given at the nodes is above each of the `levels`,
/// which rise: one region more than levels, each holding the next. Values are taken as linear over
/// the triangles between an element's sides and its middle. Where a value at a node is not finite,
/// the triangles at that node belong to no region; nor do quadrilaterals whose mark in `chosen` is
/// 0 (empty: all count).
[[nodiscard]] std::vector<Region> regions_above(const mesh::QuadMesh& mesh,
                                                std::span<const double> node_values,
                                                std::span<const double> levels,
                                                std::span<const char> chosen = {});

/// From the whole wall as it stands upwards, so that each band drawn over the last leaves no seam:
/// one more than the scale has steps.
[[nodiscard]] std::vector<Region> band_regions(const mesh::QuadMesh& mesh,
                                               const solver::PanelResult& panel,
                                               const BandScale& scale);

[[nodiscard]] Colour band_tone(int band, const BandScale& scale);

/// A limit of the scale with as many decimals as its step needs.
[[nodiscard]] std::string band_limit(double value, double step);

}  // namespace deadshore::viz
