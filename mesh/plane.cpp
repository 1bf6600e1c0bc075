#include "mesh/plane.h"

#include <algorithm>

namespace deadshore::mesh {

std::vector<double> distinct_places(std::vector<double> places) {
  std::ranges::sort(places);
  const auto same = [](double a, double b) { return b - a < same_place; };
  places.erase(std::unique(places.begin(), places.end(), same), places.end());
  return places;
}

}  // namespace deadshore::mesh
