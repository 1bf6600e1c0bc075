#pragma once

#include "mesh/wall_lines.h"
#include "mesh/wall_parts.h"

namespace deadshore::mesh {

/// Moving hard lines onto the lines kept must only shift edges: what lies between two lines that
/// become one must also lie beside them. Only slivers of masonry within a cut may vanish: they come
/// out anyway.
/// \throws GeometryError naming the part that would vanish and the element size that would fit.
void refuse_collapse(const WallParts& parts, const WallLines& lines, const WallLines& kept,
                     double size);

}  // namespace deadshore::mesh
