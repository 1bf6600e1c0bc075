#pragma once

#include "mesh/plane.h"
#include "solver/job/job.h"

#include <string>
#include <vector>

namespace deadshore::solver {

/// Something that stands at the wall, as it is seen from above. mm.
struct PieceInWay {
  std::string name;    ///< "N1 outer prop"
  mesh::Interval x;    ///< along the wall
  double clear = 0.0;  ///< between it and the wall's face
};

/// What stands on one side of the wall while the beam goes up.
struct PiecesInWay {
  std::vector<PieceInWay> pieces;
  std::vector<std::string> unknown;  ///< what stands there too, but nobody said where
};

/// Needle props that act up, by their bases, and on the inside the uprights of dead shores that
/// stand below the beam. Soles are not counted. \pre job.beam
[[nodiscard]] PiecesInWay pieces_in_way(const Job& job, PropSide side);

}  // namespace deadshore::solver
