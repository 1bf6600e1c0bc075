#include "solver/cracks/crack_window.h"

#include <algorithm>
#include <vector>

namespace deadshore::solver {

using mesh::Interval;

double opened_in(std::span<const Piece> pieces, Interval window) {
  double sum = 0.0;
  for (const Piece& piece : pieces) {
    const double part = std::min(piece.s.to, window.to) - std::max(piece.s.from, window.from);
    if (part > 0.0) sum += part * piece.strain;
  }
  return sum;
}

Interval best_window(std::span<const Piece> pieces, double length) {
  // The opening is piecewise linear in the window's place, with kinks where an end of the window
  // meets an end of a piece: it is largest at one of them.
  std::vector<double> starts{-0.5 * length, -length, 0.0};
  for (const Piece& piece : pieces) {
    for (const double end : {piece.s.from, piece.s.to}) {
      starts.push_back(std::clamp(end, -length, 0.0));
      starts.push_back(std::clamp(end - length, -length, 0.0));
    }
  }
  Interval best;
  double most = -1.0;
  for (const double start : starts) {
    const Interval window{start, start + length};
    const double opened = opened_in(pieces, window);
    if (opened > most * (1.0 + 1e-12)) {
      most = opened;
      best = window;
    }
  }
  return best;
}

}  // namespace deadshore::solver
