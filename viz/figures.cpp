#include "viz/figures.h"

namespace deadshore::viz {

std::vector<Figure> draw_figures(const solver::JobResult& /*result*/) {
  return {};
}

}  // namespace deadshore::viz
