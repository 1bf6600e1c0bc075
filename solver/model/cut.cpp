#include "solver/model/cut.h"

namespace deadshore::solver {

bool takes_out(const mesh::Cut& cut, const mesh::Opening& opening) {
  return opening.left >= cut.left - same_length && opening.right() <= cut.right + same_length &&
         opening.crown() <= cut.soffit + same_length;
}

}  // namespace deadshore::solver
