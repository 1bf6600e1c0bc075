#include "solver/job/house.h"

namespace deadshore::solver {

double weight_of(const BuildUp& build_up) {
  double weight = 0.0;
  for (const Layer& layer : build_up) weight += layer.weight;
  return weight;
}

}  // namespace deadshore::solver
