#include "io/vtk_wall.h"

#include "io/vtk_arrays.h"

#include <vtkCellData.h>
#include <vtkCellType.h>
#include <vtkIntArray.h>
#include <vtkPointData.h>
#include <vtkPoints.h>

#include <array>
#include <cmath>
#include <span>

namespace deadshore::io {
namespace {

vtkSmartPointer<vtkUnstructuredGrid> bare_grid(const mesh::QuadMesh& mesh) {
  vtkNew<vtkPoints> points;
  points->SetDataTypeToDouble();
  for (const mesh::Point& node : mesh.nodes) points->InsertNextPoint(node.x, node.y, 0.0);

  auto grid = vtkSmartPointer<vtkUnstructuredGrid>::New();
  grid->SetPoints(points);
  grid->AllocateExact(mesh.quad_count(), mesh.nodes_per_quad());
  const int type = mesh.order == mesh::QuadOrder::eight_node ? VTK_QUADRATIC_QUAD : VTK_QUAD;
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    std::array<vtkIdType, 8> ids{};  // VTK numbers corners and mid-sides as QuadMesh does
    int count = 0;
    for (const int node : mesh.nodes_of(quad)) ids.at(count++) = node;
    grid->InsertNextCell(type, count, ids.data());
  }
  return grid;
}

void add_materials(vtkCellData* cells, const solver::Job& job, const mesh::QuadMesh& mesh) {
  vtkNew<vtkStringArray> names;
  names->SetName("material");
  vtkNew<vtkIntArray> indices;
  indices->SetName("material index");
  for (const int region : mesh.region_of_quad) {
    const std::string& name = mesh.regions.at(region);
    names->InsertNextValue(region == 0 ? job.masonry.name : name);
    indices->InsertNextValue(region);
  }
  cells->AddArray(names);
  cells->AddArray(indices);
}

void add_loose(vtkCellData* cells, std::span<const char> loose) {
  vtkNew<vtkIntArray> marker;
  marker->SetName("loose");
  for (const char is_loose : loose) marker->InsertNextValue(is_loose != 0 ? 1 : 0);
  cells->AddArray(marker);
}

void add_displacement(vtkPointData* points, std::span<const double> displacement) {
  const auto nodes = static_cast<vtkIdType>(displacement.size() / 2);
  const auto array = double_array("displacement [mm]", {"x", "y", "z"}, nodes);
  for (vtkIdType node = 0; node < nodes; ++node) {
    array->SetTuple3(node, displacement[2 * node], displacement[2 * node + 1], 0.0);
  }
  points->SetVectors(array);
}

vtkSmartPointer<vtkDoubleArray> tensor_array(const std::string& name,
                                             std::span<const solver::PlaneTensor> tensors) {
  auto array = double_array(name, {"xx", "yy", "xy"}, static_cast<vtkIdType>(tensors.size()));
  for (std::size_t index = 0; index < tensors.size(); ++index) {
    const solver::PlaneTensor& tensor = tensors[index];
    array->SetTuple3(static_cast<vtkIdType>(index), tensor.xx, tensor.yy, tensor.xy);
  }
  return array;
}

void add_principal_stress(vtkPointData* points, std::span<const solver::PlaneTensor> stress) {
  const auto count = static_cast<vtkIdType>(stress.size());
  const auto major = double_array("principal stress, major [N/mm2]", {}, count);
  const auto minor = double_array("principal stress, minor [N/mm2]", {}, count);
  const auto along_major = double_array("direction of major", {"x", "y", "z"}, count);
  const auto along_minor = double_array("direction of minor", {"x", "y", "z"}, count);
  for (vtkIdType index = 0; index < count; ++index) {
    const solver::Principal principal = solver::principal_of(stress[index]);
    const double cosine = std::cos(principal.angle);
    const double sine = std::sin(principal.angle);
    major->SetValue(index, principal.major);
    minor->SetValue(index, principal.minor);
    along_major->SetTuple3(index, cosine, sine, 0.0);
    along_minor->SetTuple3(index, -sine, cosine, 0.0);
  }
  for (const auto& array : {major, minor, along_major, along_minor}) points->AddArray(array);
}

vtkSmartPointer<vtkDoubleArray> largest_crack_strain(std::span<const solver::PlaneTensor> strains) {
  auto array = double_array("largest crack strain", {}, static_cast<vtkIdType>(strains.size()));
  for (std::size_t index = 0; index < strains.size(); ++index) {
    array->SetValue(static_cast<vtkIdType>(index), solver::principal_of(strains[index]).major);
  }
  return array;
}

}  // namespace

vtkSmartPointer<vtkUnstructuredGrid> wall_grid(const solver::JobResult& result,
                                               const solver::StageResult& stage,
                                               const solver::PanelResult& analysis) {
  auto grid = bare_grid(result.mesh.quads);
  add_label(grid->GetFieldData(), "stage", stage.name);
  add_label(grid->GetFieldData(), "model", solver::to_string(analysis.model));
  add_materials(grid->GetCellData(), result.job, result.mesh.quads);

  const solver::PanelFields& fields = analysis.fields;
  if (!fields.quad_loose.empty()) add_loose(grid->GetCellData(), fields.quad_loose);
  if (!analysis.stands()) {
    add_label(grid->GetFieldData(), "no equilibrium", analysis.no_equilibrium);
    return grid;
  }
  add_displacement(grid->GetPointData(), fields.displacement);
  grid->GetPointData()->AddArray(tensor_array("stress [N/mm2]", fields.node_stress));
  add_principal_stress(grid->GetPointData(), fields.node_stress);
  grid->GetCellData()->AddArray(tensor_array("mean stress [N/mm2]", fields.quad_stress));
  grid->GetCellData()->AddArray(tensor_array("crack strain", fields.quad_crack_strain));
  grid->GetCellData()->AddArray(largest_crack_strain(fields.quad_crack_strain));
  return grid;
}

}  // namespace deadshore::io
