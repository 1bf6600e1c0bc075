#include "viz/view/point_values.h"
#include "viz/view/solids.h"
#include "viz/view/vtk_reading.h"

#include <vtkCellArray.h>
#include <vtkCellData.h>
#include <vtkDataArray.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPoints.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

namespace deadshore::viz {
namespace {

/// Left, right, underside and top, mm.
struct Face {
  double left = 0.0;
  double right = 0.0;
  double underside = 0.0;
  double top = 0.0;
};

std::optional<Face> face_of_beam(vtkPolyData* supports) {
  const std::vector<std::string> parts = texts_of(supports->GetCellData(), "part");
  const auto found = std::ranges::find(parts, "beam");
  if (found == parts.end()) return std::nullopt;
  std::array<double, 6> bounds{};
  supports->GetCellBounds(found - parts.begin(), bounds.data());
  return Face{bounds[0], bounds[1], bounds[2], bounds[3]};
}

std::optional<double> x_of_support(vtkPolyData* supports, const char* name) {
  const std::vector<std::string> names = texts_of(supports->GetPointData(), "name");
  const auto found = std::ranges::find(names, name);
  if (found == names.end()) return std::nullopt;
  return supports->GetPoint(found - names.begin())[0];
}

/// How far the wall just under a bearing goes up (so mostly negative), mm.
double lift_under(const ShownWall& wall, double x, double underside) {
  constexpr double into_padstone = 1.0;  // mm
  const auto place = place_at(wall.grid, x, underside - into_padstone);
  return place ? movement_at(wall.grid, *place)[1] : 0.0;
}

struct Station {
  double x = 0.0;
  double down = 0.0;  ///< mm
};

std::vector<Station> stations_of(vtkPolyData* line) {
  std::vector<Station> stations;
  vtkDataArray* deflection = line->GetPointData()->GetArray("deflection [mm]");
  for (vtkIdType id = 0; id < line->GetNumberOfPoints(); ++id) {
    const double down = deflection == nullptr ? 0.0 : deflection->GetTuple1(id);
    stations.push_back({line->GetPoint(id)[0], std::isfinite(down) ? down : 0.0});
  }
  std::ranges::sort(stations, {}, &Station::x);
  return stations;
}

double interpolated(const std::vector<Station>& stations, double x) {
  const auto next = std::ranges::lower_bound(stations, x, {}, &Station::x);
  if (next == stations.begin()) return stations.front().down;
  if (next == stations.end()) return stations.back().down;
  const Station& before = *(next - 1);
  const double share = (x - before.x) / std::max(next->x - before.x, 1e-9);
  return before.down + share * (next->down - before.down);
}

/// A box that bends: four corners at each place along it.
vtkSmartPointer<vtkPolyData> bent_box(const Face& face, double half_width,
                                      const std::vector<Station>& axis) {
  const vtkNew<vtkPoints> points;
  points->SetDataTypeToDouble();
  const vtkNew<vtkCellArray> faces;
  for (const Station& at : axis) {
    points->InsertNextPoint(at.x, face.underside - at.down, half_width);
    points->InsertNextPoint(at.x, face.top - at.down, half_width);
    points->InsertNextPoint(at.x, face.top - at.down, -half_width);
    points->InsertNextPoint(at.x, face.underside - at.down, -half_width);
  }
  const auto count = static_cast<vtkIdType>(axis.size());
  for (vtkIdType i = 0; i + 1 < count; ++i) {
    for (vtkIdType k = 0; k < 4; ++k) {
      const vtkIdType next = (k + 1) % 4;
      const std::array<vtkIdType, 4> ids = {4 * i + k, 4 * i + next, 4 * i + 4 + next,
                                            4 * i + 4 + k};
      faces->InsertNextCell(4, ids.data());
    }
  }
  for (const vtkIdType end : {vtkIdType{0}, 4 * (count - 1)}) {
    const std::array<vtkIdType, 4> ids = {end, end + 1, end + 2, end + 3};
    faces->InsertNextCell(4, ids.data());
  }
  auto box = vtkSmartPointer<vtkPolyData>::New();
  box->SetPoints(points);
  box->SetPolys(faces);
  return box;
}

}  // namespace

vtkSmartPointer<vtkPolyData> beam_solid(const ShownResult& result, const ShownWall& wall,
                                        double magnification) {
  const std::optional<Face> face = face_of_beam(result.supports);
  if (!face || !wall.beam) return nullptr;
  const double left = x_of_support(result.supports, "beam left end").value_or(face->left);
  const double right = x_of_support(result.supports, "beam right end").value_or(face->right);
  const double lift_left = lift_under(wall, left, face->underside);
  const double lift_right = lift_under(wall, right, face->underside);
  std::vector<Station> axis = stations_of(wall.beam);
  const double down_left = interpolated(axis, left);
  const double down_right = interpolated(axis, right);
  for (Station& at : axis) {
    const double share = (at.x - left) / std::max(right - left, 1e-9);
    const double chord = down_left + share * (down_right - down_left);
    const double lift = lift_left + share * (lift_right - lift_left);
    at.down = magnification * (at.down - chord - lift);
  }
  constexpr double part_of_thickness = 0.4;  // each way from the middle
  return bent_box(*face, std::max(part_of_thickness * result.thickness, 1.0), axis);
}

}  // namespace deadshore::viz
