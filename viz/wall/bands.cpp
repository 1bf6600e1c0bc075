#include "viz/wall/bands.h"

#include <vtkBandedPolyDataContourFilter.h>
#include <vtkCellArray.h>
#include <vtkCellArrayIterator.h>
#include <vtkCellData.h>
#include <vtkDoubleArray.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPoints.h>
#include <vtkPolyData.h>
#include <vtkSmartPointer.h>

#include <array>
#include <cmath>

namespace deadshore::viz {
namespace {

/// Nodes round an element, anticlockwise.
std::vector<int> rim_of(const mesh::QuadMesh& mesh, int quad) {
  const auto nodes = mesh.nodes_of(quad);
  if (mesh.order == mesh::QuadOrder::four_node) return {nodes.begin(), nodes.end()};
  return {nodes[0], nodes[4], nodes[1], nodes[5], nodes[2], nodes[6], nodes[3], nodes[7]};
}

/// Triangles from each side of an element to its middle, with values at their corners. The filter
/// cannot take values that are not finite.
vtkSmartPointer<vtkPolyData> as_triangles(const mesh::QuadMesh& mesh,
                                          std::span<const double> values,
                                          std::span<const char> chosen) {
  const vtkNew<vtkPoints> points;
  points->SetDataTypeToDouble();
  const vtkNew<vtkDoubleArray> scalars;
  const vtkNew<vtkCellArray> triangles;
  const auto add = [&](double x, double y, double value) {
    scalars->InsertNextValue(value);
    return points->InsertNextPoint(x, y, 0.0);
  };
  for (int node = 0; node < mesh.node_count(); ++node)
    add(mesh.nodes[node].x, mesh.nodes[node].y, std::isfinite(values[node]) ? values[node] : 0.0);

  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    if (!chosen.empty() && chosen[quad] == 0) continue;
    const std::vector<int> rim = rim_of(mesh, quad);
    mesh::Point middle;
    double value = 0.0;
    int finite = 0;
    for (const int node : rim) {
      middle.x += mesh.nodes[node].x / static_cast<double>(rim.size());
      middle.y += mesh.nodes[node].y / static_cast<double>(rim.size());
      if (!std::isfinite(values[node])) continue;
      value += values[node];
      ++finite;
    }
    if (finite < 2) continue;
    const vtkIdType centre = add(middle.x, middle.y, value / finite);
    for (std::size_t i = 0; i < rim.size(); ++i) {
      const int a = rim[i];
      const int b = rim[(i + 1) % rim.size()];
      if (!std::isfinite(values[a]) || !std::isfinite(values[b])) continue;
      triangles->InsertNextCell({a, b, centre});
    }
  }
  auto surface = vtkSmartPointer<vtkPolyData>::New();
  surface->SetPoints(points);
  surface->SetPolys(triangles);
  surface->GetPointData()->SetScalars(scalars);
  return surface;
}

/// Levels just outside both the data and the levels asked for: without them the filter numbers its
/// bands by what it finds, and with far ones its tolerance (a part of their distance) grows.
std::vector<double> enclosed(std::span<const double> levels, vtkDataArray* scalars) {
  std::array<double, 2> range{};
  scalars->GetRange(range.data());
  const double low = std::min(range[0], levels.front());
  const double high = std::max(range[1], levels.back());
  const double beside = std::max(high - low, 1e-9);
  std::vector<double> all{low - beside};
  all.insert(all.end(), levels.begin(), levels.end());
  all.push_back(high + beside);
  return all;
}

RankedPolygons polygons_of(vtkPolyData* bands) {
  RankedPolygons polygons;
  vtkDataArray* ranks = bands->GetCellData()->GetScalars();
  const auto it = vtk::TakeSmartPointer(bands->GetPolys()->NewIterator());
  // Cell data run over vertices and lines first; the filter makes neither.
  vtkIdType cell = 0;
  std::vector<int> corners;
  for (it->GoToFirstCell(); !it->IsDoneWithTraversal(); it->GoToNextCell(), ++cell) {
    vtkIdType count = 0;
    const vtkIdType* ids = nullptr;
    it->GetCurrentCell(count, ids);
    corners.assign(ids, ids + count);
    polygons.add(corners, static_cast<int>(std::lround(ranks->GetComponent(cell, 0))));
  }
  return polygons;
}

}  // namespace

BandScale even_scale(double value) {
  if (!(value > 0.0) || !std::isfinite(value)) return {1.0, 1};
  // The largest round step that still makes five bands.
  BandScale best;
  const double power = std::pow(10.0, std::floor(std::log10(value)) - 1.0);
  for (const double factor : {1.0, 2.0, 2.5, 5.0, 10.0, 20.0}) {
    const double step = factor * power;
    const int count = static_cast<int>(std::ceil(value / step - 1e-9));
    if (count >= 5) best = {step, count};
  }
  return best;
}

std::vector<Region> regions_above(const mesh::QuadMesh& mesh, std::span<const double> node_values,
                                  std::span<const double> levels, std::span<const char> chosen) {
  const auto surface = as_triangles(mesh, node_values, chosen);
  std::vector<Region> regions(levels.size() + 1);
  if (surface->GetNumberOfPolys() == 0 || levels.empty()) return regions;

  const std::vector<double> limits = enclosed(levels, surface->GetPointData()->GetScalars());
  const vtkNew<vtkBandedPolyDataContourFilter> filter;
  filter->SetInputData(surface);
  filter->SetNumberOfContours(static_cast<int>(limits.size()));
  for (std::size_t k = 0; k < limits.size(); ++k) filter->SetValue(static_cast<int>(k), limits[k]);
  filter->SetScalarModeToIndex();
  filter->ClippingOn();
  filter->Update();

  vtkPolyData* bands = filter->GetOutput();
  std::vector<mesh::Point> points(static_cast<std::size_t>(bands->GetNumberOfPoints()));
  for (std::size_t i = 0; i < points.size(); ++i) {
    std::array<double, 3> position{};
    bands->GetPoint(static_cast<vtkIdType>(i), position.data());
    points[i] = {position[0], position[1]};
  }
  const auto nested = nested_rings(polygons_of(bands), static_cast<int>(regions.size()));
  for (std::size_t k = 0; k < regions.size(); ++k)
    for (const auto& numbers : nested[k]) {
      Ring ring = ring_through(numbers, points);
      if (ring.size() >= 3) regions[k].push_back(std::move(ring));
    }
  return regions;
}

}  // namespace deadshore::viz
