#include "solver/job/cut.h"

namespace deadshore::solver {

bool takes_out(const mesh::Cut& cut, const mesh::Opening& opening) {
  return opening.left >= cut.left - same_length && opening.right() <= cut.right + same_length &&
         opening.crown() <= cut.soffit + same_length;
}

bool takes_out(const mesh::WallShape& wall, const mesh::LintelShape& lintel) {
  const mesh::LintelExtent extent = mesh::extent_of(lintel, wall);
  return extent.x.from >= wall.cut.left - same_length &&
         extent.x.to <= wall.cut.right + same_length &&
         extent.y.to <= wall.cut.soffit + same_length;
}

}  // namespace deadshore::solver
