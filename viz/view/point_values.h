#pragma once

#include <vtkSmartPointer.h>
#include <vtkUnstructuredGrid.h>

#include <array>
#include <optional>
#include <string>
#include <vector>

/// The values of every field at a place on the wall.
namespace deadshore::viz {

/// An element and where in it: a weight for each of its nodes.
struct PlaceInWall {
  vtkIdType cell = -1;
  std::array<double, 8> weights{};
};

/// The place of a point of the wall as built, mm; none where no masonry is there.
[[nodiscard]] std::optional<PlaceInWall> place_at(vtkUnstructuredGrid* grid, double x, double y);

/// The place in an element of the point nearest to (x, y) where the wall is drawn with its
/// movements magnified so.
[[nodiscard]] PlaceInWall place_in_cell(vtkUnstructuredGrid* grid, vtkIdType cell, double x,
                                        double y, double magnification);

/// Where it lies in the wall as built, mm.
[[nodiscard]] std::array<double, 2> as_built(vtkUnstructuredGrid* grid, const PlaceInWall& place);

/// Where it lies as built, then one line a field with its unit, and what it is made of.
[[nodiscard]] std::vector<std::string> point_text(vtkUnstructuredGrid* grid,
                                                  const PlaceInWall& place);

/// The movement there, mm; zero where the wall has none.
[[nodiscard]] std::array<double, 2> movement_at(vtkUnstructuredGrid* grid,
                                                const PlaceInWall& place);

}  // namespace deadshore::viz
