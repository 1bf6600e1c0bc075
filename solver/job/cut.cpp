#include "solver/job/cut.h"

namespace deadshore::solver {

bool takes_out(const mesh::Cut& cut, const mesh::Opening& opening) {
  return opening.left >= cut.left - mesh::same_place &&
         opening.right() <= cut.right + mesh::same_place &&
         opening.crown() <= cut.soffit + mesh::same_place;
}

bool takes_out(const mesh::WallShape& wall, const mesh::LintelShape& lintel) {
  const mesh::LintelExtent extent = mesh::extent_of(lintel, wall);
  return extent.x.from >= wall.cut.left - mesh::same_place &&
         extent.x.to <= wall.cut.right + mesh::same_place &&
         extent.y.to <= wall.cut.soffit + mesh::same_place;
}

}  // namespace deadshore::solver
