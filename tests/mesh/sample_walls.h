#pragma once

#include "mesh/wall_shape.h"

#include <utility>
#include <vector>

namespace deadshore::mesh::testing {

/// An invented wall, 6 m by 5.2 m with a 3.6 m cut; the others vary its top and openings.
inline WallShape plain_wall() {
  return {6000.0, {{0.0, 5200.0}, {6000.0, 5200.0}}, {}, {}, {800.0, 4400.0, 2400.0}};
}

inline WallShape wall_with_top(std::vector<Point> top) {
  WallShape wall = plain_wall();
  wall.top = std::move(top);
  return wall;
}

inline WallShape gable() {
  return wall_with_top({{0.0, 3200.0}, {3000.0, 6000.0}, {6000.0, 3200.0}});
}

/// A chimney through the left slope of the gable.
inline WallShape gable_with_chimney() {
  return wall_with_top({{0.0, 3200.0},
                        {1200.0, 4320.0},
                        {1200.0, 6500.0},
                        {1950.0, 6500.0},
                        {1950.0, 5020.0},
                        {3000.0, 6000.0},
                        {6000.0, 3200.0}});
}

inline WallShape stepped_parapet() {
  return wall_with_top({{0.0, 4000.0},
                        {1500.0, 4000.0},
                        {1500.0, 4600.0},
                        {4000.0, 4600.0},
                        {4000.0, 5200.0},
                        {6000.0, 5200.0}});
}

inline WallShape raking_top() {
  return wall_with_top({{0.0, 5200.0}, {6000.0, 3600.0}});
}

inline Interval middle_bearing() {
  return {2524.0, 2676.0};
}

}  // namespace deadshore::mesh::testing
