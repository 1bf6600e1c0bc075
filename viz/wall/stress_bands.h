#pragma once

#include "solver/result/results.h"
#include "viz/page/palette.h"
#include "viz/wall/bands.h"

#include <string>
#include <vector>

/// Principal compression as bands, for every figure that shows it.
namespace deadshore::viz {

/// From the whole wall as it stands upwards, so that each band drawn over the last leaves no seam:
/// one more than the scale has steps.
[[nodiscard]] std::vector<Region> band_regions(const mesh::QuadMesh& mesh,
                                               const solver::PanelResult& panel,
                                               const BandScale& scale);

[[nodiscard]] Colour band_tone(int band, const BandScale& scale);

/// A limit of the scale with as many decimals as its step needs.
[[nodiscard]] std::string band_limit(double value, double step);

}  // namespace deadshore::viz
