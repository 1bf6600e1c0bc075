#pragma once

#include "mesh/feature_lines.h"
#include "mesh/wall_shape.h"

#include <span>
#include <vector>

namespace deadshore::mesh {

/// The lines of both axes: all of them as given, or those the grid keeps.
struct WallLines {
  std::vector<FeatureLine> uprights;
  std::vector<FeatureLine> levels;
};

/// Moving hard lines onto the lines kept must only shift edges: what lies between two lines that
/// become one must also lie beside them.
/// \throws GeometryError naming the part that would vanish and the element size that would fit.
void refuse_collapse(const WallShape& shape, const WallLines& lines, const WallLines& kept,
                     double size);

}  // namespace deadshore::mesh
