#include "viz/view/answers.h"
#include "viz/view/solids.h"

#include <nlohmann/json.hpp>
#include <vtkCellArray.h>
#include <vtkCellData.h>
#include <vtkDataArray.h>
#include <vtkIdTypeArray.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPoints.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <utility>
#include <vector>

namespace deadshore::viz {

namespace {

/// Lines stand this far off the faces, mm, or they would be lost in them.
constexpr double clear_of_wall = 4.0;

/// The nodes round an element, mid-sides between corners.
std::vector<vtkIdType> rim_of(vtkUnstructuredGrid* grid, vtkIdType cell) {
  vtkIdType count = 0;
  const vtkIdType* ids = nullptr;
  grid->GetCellPoints(cell, count, ids);
  if (count != 8) return {ids, ids + count};
  return {ids[0], ids[4], ids[1], ids[5], ids[2], ids[6], ids[3], ids[7]};
}

struct Side {
  vtkIdType from = 0;
  vtkIdType to = 0;
  vtkIdType cell = 0;
};

/// The sides that belong to one element alone, as it runs round them.
std::vector<Side> free_sides(vtkUnstructuredGrid* grid) {
  std::map<std::pair<vtkIdType, vtkIdType>, std::pair<int, Side>> seen;
  for (vtkIdType cell = 0; cell < grid->GetNumberOfCells(); ++cell) {
    const std::vector<vtkIdType> rim = rim_of(grid, cell);
    for (std::size_t i = 0; i < rim.size(); ++i) {
      const Side side{rim[i], rim[(i + 1) % rim.size()], cell};
      auto& [count, first] = seen[std::minmax(side.from, side.to)];
      if (++count == 1) first = side;
    }
  }
  std::vector<Side> sides;
  for (const auto& [ends, entry] : seen) {
    if (entry.first == 1) sides.push_back(entry.second);
  }
  return sides;
}

/// All nodes where they are drawn, at z in front (`half`), then all of them behind (-`half`).
vtkSmartPointer<vtkPoints> both_faces(vtkUnstructuredGrid* grid, double half,
                                      double magnification) {
  vtkDataArray* movements = grid->GetPointData()->GetArray("displacement [mm]");
  auto points = vtkSmartPointer<vtkPoints>::New();
  points->SetDataTypeToDouble();
  const vtkIdType count = grid->GetNumberOfPoints();
  points->SetNumberOfPoints(2 * count);
  for (vtkIdType id = 0; id < count; ++id) {
    std::array<double, 3> at{};
    grid->GetPoint(id, at.data());
    for (const int axis : {0, 1}) {
      if (movements != nullptr) at.at(axis) += magnification * movements->GetComponent(id, axis);
    }
    points->SetPoint(id, at[0], at[1], half);
    points->SetPoint(count + id, at[0], at[1], -half);
  }
  return points;
}

/// The entries of `from` with the numbers `chosen`, one after the other.
void copy_entries(vtkDataSetAttributes* from, vtkDataSetAttributes* to,
                  const std::vector<vtkIdType>& chosen) {
  to->CopyAllOn();
  to->CopyAllocate(from, static_cast<vtkIdType>(chosen.size()));
  vtkIdType next = 0;
  for (const vtkIdType id : chosen) to->CopyData(from, id, next++);
}

std::vector<vtkIdType> twice(vtkIdType count) {
  std::vector<vtkIdType> numbers(2 * static_cast<std::size_t>(count));
  for (std::size_t i = 0; i < numbers.size(); ++i) numbers[i] = static_cast<vtkIdType>(i) % count;
  return numbers;
}

void insert(vtkCellArray* cells, const std::vector<vtkIdType>& ids) {
  cells->InsertNextCell(static_cast<vtkIdType>(ids.size()), ids.data());
}

/// Nodes at which the outline turns, or at which more than two free sides meet.
std::vector<vtkIdType> corners_of(vtkUnstructuredGrid* grid, const std::vector<Side>& sides) {
  std::map<vtkIdType, std::vector<std::array<double, 2>>> directions;
  for (const Side& side : sides) {
    std::array<double, 3> from{};
    std::array<double, 3> to{};
    grid->GetPoint(side.from, from.data());
    grid->GetPoint(side.to, to.data());
    const double length = std::hypot(to[0] - from[0], to[1] - from[1]);
    if (length <= 0.0) continue;
    for (const vtkIdType end : {side.from, side.to}) {
      directions[end].push_back({(to[0] - from[0]) / length, (to[1] - from[1]) / length});
    }
  }
  constexpr double straight = 0.9;  // cosine of the turn up to which a line counts as smooth
  std::vector<vtkIdType> corners;
  for (const auto& [node, ways] : directions) {
    const bool smooth =
        ways.size() == 2 && std::abs(ways[0][0] * ways[1][0] + ways[0][1] * ways[1][1]) > straight;
    if (!smooth) corners.push_back(node);
  }
  return corners;
}

}  // namespace

vtkSmartPointer<vtkPolyData> wall_solid(vtkUnstructuredGrid* grid, double thickness,
                                        double magnification) {
  const vtkIdType behind = grid->GetNumberOfPoints();
  const vtkNew<vtkCellArray> faces;
  std::vector<vtkIdType> element;
  for (vtkIdType cell = 0; cell < grid->GetNumberOfCells(); ++cell) {
    std::vector<vtkIdType> rim = rim_of(grid, cell);
    insert(faces, rim);
    std::ranges::reverse(rim);
    for (vtkIdType& id : rim) id += behind;
    insert(faces, rim);
    element.insert(element.end(), {cell, cell});
  }
  for (const Side& side : free_sides(grid)) {
    insert(faces, {side.to, side.from, side.from + behind, side.to + behind});
    element.push_back(side.cell);
  }
  auto solid = vtkSmartPointer<vtkPolyData>::New();
  solid->SetPoints(both_faces(grid, 0.5 * thickness, magnification));
  solid->SetPolys(faces);
  copy_entries(grid->GetPointData(), solid->GetPointData(), twice(behind));
  copy_entries(grid->GetCellData(), solid->GetCellData(), element);
  const vtkNew<vtkIdTypeArray> numbers;
  numbers->SetName("element");
  for (const vtkIdType cell : element) numbers->InsertNextValue(cell);
  solid->GetCellData()->AddArray(numbers);
  return solid;
}

vtkSmartPointer<vtkPolyData> wall_outline(vtkUnstructuredGrid* grid, double thickness,
                                          double magnification) {
  const vtkIdType behind = grid->GetNumberOfPoints();
  const std::vector<Side> sides = free_sides(grid);
  const vtkNew<vtkCellArray> lines;
  for (const Side& side : sides) {
    insert(lines, {side.from, side.to});
    insert(lines, {side.from + behind, side.to + behind});
  }
  for (const vtkIdType corner : corners_of(grid, sides)) insert(lines, {corner, corner + behind});
  auto outline = vtkSmartPointer<vtkPolyData>::New();
  outline->SetPoints(both_faces(grid, 0.5 * thickness + clear_of_wall, magnification));
  outline->SetLines(lines);
  return outline;
}

vtkSmartPointer<vtkPolyData> loose_crosses(vtkUnstructuredGrid* grid, double thickness,
                                           double magnification) {
  const vtkIdType behind = grid->GetNumberOfPoints();
  vtkDataArray* loose = grid->GetCellData()->GetArray("loose");
  const vtkNew<vtkCellArray> lines;
  for (vtkIdType cell = 0; loose != nullptr && cell < grid->GetNumberOfCells(); ++cell) {
    if (loose->GetTuple1(cell) == 0.0) continue;
    vtkIdType count = 0;
    const vtkIdType* ids = nullptr;
    grid->GetCellPoints(cell, count, ids);
    const std::array<vtkIdType, 4> corners = {ids[0], ids[1], ids[2], ids[3]};
    for (const vtkIdType offset : {vtkIdType{0}, behind}) {
      insert(lines, {corners[0] + offset, corners[2] + offset});
      insert(lines, {corners[1] + offset, corners[3] + offset});
    }
  }
  auto crosses = vtkSmartPointer<vtkPolyData>::New();
  crosses->SetPoints(both_faces(grid, 0.5 * thickness + clear_of_wall, magnification));
  crosses->SetLines(lines);
  return crosses;
}

std::string needle_called(const nlohmann::json& answers, const std::string& label) {
  constexpr std::string_view mark = "needle ";
  const auto is_needle = [&](const std::string& name) {
    return number_at(answers, {"hand", "needles", name}).has_value();
  };
  if (is_needle(label)) return label;
  if (!label.starts_with(mark)) return "";
  const std::string name = label.substr(mark.size());
  return is_needle(name) ? name : "";
}

bool needle_is_in(const nlohmann::json& answers, std::size_t stage, const std::string& needle) {
  bool is_in = false;
  bool is_followed = false;
  const nlohmann::json& stages = list_at(answers, {"stages"});
  for (std::size_t i = 0; i <= stage && i < stages.size(); ++i) {
    if (at_path(stages[i], {"operations"}) == nullptr) continue;
    is_followed = true;
    for (const nlohmann::json& operation : list_at(stages[i], {"operations"})) {
      if (operation == "fit " + needle) is_in = true;
      if (operation == "release " + needle) is_in = false;
    }
  }
  return is_in || !is_followed;
}

}  // namespace deadshore::viz
