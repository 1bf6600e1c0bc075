#include "viz/view/point_values.h"

#include "viz/view/vtk_reading.h"

#include <fmt/format.h>
#include <vtkCellData.h>
#include <vtkDataArray.h>
#include <vtkGenericCell.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPoints.h>

#include <algorithm>
#include <cmath>

namespace deadshore::viz {
namespace {

constexpr const char* movement = "displacement [mm]";

/// "displacement [mm]" and "0.12 -1.5" make "displacement: 0.12 -1.5 mm".
std::string line_of(const std::string& array, const std::string& values) {
  const std::size_t open = array.rfind(" [");
  if (open == std::string::npos || !array.ends_with(']')) {
    return fmt::format("{}: {}", array, values);
  }
  return fmt::format("{}: {} {}", array.substr(0, open), values,
                     array.substr(open + 2, array.size() - open - 3));
}

double value_at(vtkDataArray* array, int component, vtkCell* cell, const PlaceInWall& place) {
  double sum = 0.0;
  for (vtkIdType i = 0; i < cell->GetNumberOfPoints(); ++i) {
    sum += place.weights.at(static_cast<std::size_t>(i)) *
           array->GetComponent(cell->GetPointId(static_cast<int>(i)), component);
  }
  return sum;
}

/// The components of a plane quantity: z of a vector is none of its own.
template <class ValueAt>
std::string values_of(vtkDataArray* array, ValueAt value) {
  std::string text;
  for (int part = 0; part < array->GetNumberOfComponents(); ++part) {
    const char* name = array->GetComponentName(part);
    const std::string label = name == nullptr ? "" : name;
    if (label == "z") continue;
    text += text.empty() ? "" : ", ";
    text += label.empty() ? "" : label + " ";
    text += fmt::format("{:.3g}", value(part));
  }
  return text;
}

}  // namespace

std::optional<PlaceInWall> place_at(vtkUnstructuredGrid* grid, double x, double y) {
  const std::array<double, 3> at = {x, y, 0.0};
  std::array<double, 3> parameters{};
  PlaceInWall place;
  int part = 0;
  place.cell = grid->FindCell(const_cast<double*>(at.data()), nullptr, 0, 1e-3, part,
                              parameters.data(), place.weights.data());
  return place.cell < 0 ? std::nullopt : std::optional(place);
}

PlaceInWall place_in_cell(vtkUnstructuredGrid* grid, vtkIdType cell, double x, double y,
                          double magnification) {
  const vtkNew<vtkGenericCell> moved;
  grid->GetCell(cell, moved);
  vtkDataArray* movements = grid->GetPointData()->GetArray(movement);
  for (vtkIdType i = 0; movements != nullptr && i < moved->GetNumberOfPoints(); ++i) {
    std::array<double, 3> at{};
    moved->GetPoints()->GetPoint(i, at.data());
    const vtkIdType id = moved->GetPointId(static_cast<int>(i));
    for (int axis : {0, 1}) at.at(axis) += magnification * movements->GetComponent(id, axis);
    moved->GetPoints()->SetPoint(i, at.data());
  }
  const std::array<double, 3> at = {x, y, 0.0};
  std::array<double, 3> closest{};
  std::array<double, 3> parameters{};
  int part = 0;
  double distance = 0.0;
  PlaceInWall place;
  place.cell = cell;
  moved->EvaluatePosition(at.data(), closest.data(), part, parameters.data(), distance,
                          place.weights.data());
  return place;
}

std::array<double, 2> as_built(vtkUnstructuredGrid* grid, const PlaceInWall& place) {
  vtkCell* cell = grid->GetCell(place.cell);
  std::array<double, 2> at{};
  for (vtkIdType i = 0; i < cell->GetNumberOfPoints(); ++i) {
    for (const int axis : {0, 1}) {
      at.at(axis) +=
          place.weights.at(static_cast<std::size_t>(i)) * cell->GetPoints()->GetPoint(i)[axis];
    }
  }
  return at;
}

std::vector<std::string> point_text(vtkUnstructuredGrid* grid, const PlaceInWall& place) {
  const std::array<double, 2> at = as_built(grid, place);
  vtkCell* cell = grid->GetCell(place.cell);
  std::vector<std::string> lines = {fmt::format("Wall at x {:.0f} mm, y {:.0f} mm", at[0], at[1])};
  const std::vector<std::string> materials = texts_of(grid->GetCellData(), "material");
  if (!materials.empty()) {
    lines.push_back("material: " + materials.at(static_cast<std::size_t>(place.cell)));
  }
  for (int i = 0; i < grid->GetPointData()->GetNumberOfArrays(); ++i) {
    vtkDataArray* array = grid->GetPointData()->GetArray(i);
    if (array == nullptr) continue;
    lines.push_back(line_of(array->GetName(), values_of(array, [&](int part) {
                              return value_at(array, part, cell, place);
                            })));
  }
  for (int i = 0; i < grid->GetCellData()->GetNumberOfArrays(); ++i) {
    vtkDataArray* array = grid->GetCellData()->GetArray(i);
    if (array == nullptr) continue;
    lines.push_back(line_of(array->GetName(), values_of(array, [&](int part) {
                              return array->GetComponent(place.cell, part);
                            })));
  }
  return lines;
}

std::array<double, 2> movement_at(vtkUnstructuredGrid* grid, const PlaceInWall& place) {
  vtkDataArray* movements = grid->GetPointData()->GetArray(movement);
  if (movements == nullptr) return {0.0, 0.0};
  vtkCell* cell = grid->GetCell(place.cell);
  return {value_at(movements, 0, cell, place), value_at(movements, 1, cell, place)};
}

}  // namespace deadshore::viz
