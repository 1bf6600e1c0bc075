#include "io/vtk/vtk_arrays.h"
#include "io/vtk/vtk_fields.h"
#include "io/vtk/vtk_parts.h"
#include "solver/fem/job_mesh.h"
#include "solver/study/stage_facts.h"

#include <vtkCellData.h>
#include <vtkCellType.h>
#include <vtkIntArray.h>
#include <vtkPointData.h>
#include <vtkPoints.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

/// The part of the mesh that is there at a stage, and its nodes, in their order.
struct Present {
  std::vector<int> quads;
  std::vector<int> nodes;
};

Present present_in(const mesh::QuadMesh& mesh, std::span<const char> quad_out) {
  Present present;
  const bool whole = std::ranges::none_of(quad_out, [](char out) { return out != 0; });
  std::vector<char> used(mesh.nodes.size(), whole ? 1 : 0);
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    if (!whole && quad_out[quad] != 0) continue;
    present.quads.push_back(quad);
    for (const int node : mesh.nodes_of(quad)) used[node] = 1;
  }
  for (int node = 0; node < mesh.node_count(); ++node) {
    if (used[node] != 0) present.nodes.push_back(node);
  }
  return present;
}

/// The entries of `all` that are numbered in `chosen`.
template <class Value>
std::vector<Value> only(std::span<const Value> all, std::span<const int> chosen) {
  std::vector<Value> values;
  values.reserve(chosen.size());
  for (const int index : chosen) values.push_back(all[index]);
  return values;
}

vtkSmartPointer<vtkUnstructuredGrid> bare_grid(const mesh::QuadMesh& mesh, const Present& present) {
  vtkNew<vtkPoints> points;
  points->SetDataTypeToDouble();
  std::vector<vtkIdType> id_of_node(mesh.nodes.size(), -1);
  for (const int node : present.nodes) {
    id_of_node[node] = points->InsertNextPoint(mesh.nodes[node].x, mesh.nodes[node].y, 0.0);
  }
  auto grid = vtkSmartPointer<vtkUnstructuredGrid>::New();
  grid->SetPoints(points);
  grid->AllocateExact(static_cast<vtkIdType>(present.quads.size()), mesh.nodes_per_quad());
  const int type = mesh.order == mesh::QuadOrder::eight_node ? VTK_QUADRATIC_QUAD : VTK_QUAD;
  for (const int quad : present.quads) {
    std::array<vtkIdType, 8> ids{};  // VTK numbers corners and mid-sides as QuadMesh does
    int count = 0;
    for (const int node : mesh.nodes_of(quad)) ids.at(count++) = id_of_node[node];
    grid->InsertNextCell(type, count, ids.data());
  }
  return grid;
}

/// What a region is made of: a lintel, padstones once they are placed, else masonry.
std::string material_of(const solver::Job& job, mesh::Region region, bool padstones) {
  if (region.kind == mesh::RegionKind::lintel) return job.lintels.at(region.index).shape.name;
  if (padstones && region == solver::padstones_region) return "padstones";
  return job.masonry.name;
}

void add_materials(vtkCellData* cells, const solver::JobResult& result,
                   const solver::StageResult& stage, const Present& present) {
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const bool padstones = stage.state.padstones;
  vtkNew<vtkStringArray> names;
  names->SetName(vtk_fields::material.name);
  vtkNew<vtkIntArray> indices;
  indices->SetName(vtk_fields::material_index.name);
  for (const int quad : present.quads) {
    names->InsertNextValue(material_of(result.job, mesh.region_of(quad), padstones));
    indices->InsertNextValue(mesh.region_of_quad[quad]);
  }
  cells->AddArray(names);
  cells->AddArray(indices);
}

void add_loose(vtkCellData* cells, std::span<const char> loose, const Present& present) {
  vtkNew<vtkIntArray> marker;
  marker->SetName(vtk_fields::loose.name);
  for (const int quad : present.quads) marker->InsertNextValue(loose[quad] != 0 ? 1 : 0);
  cells->AddArray(marker);
}

/// Vectors from two components a node of the whole mesh.
vtkSmartPointer<vtkDoubleArray> vector_array(const std::string& name,
                                             std::span<const double> components,
                                             const Present& present) {
  auto array = double_array(name, {"x", "y", "z"}, static_cast<vtkIdType>(present.nodes.size()));
  vtkIdType id = 0;
  for (const int node : present.nodes) {
    const std::size_t first = 2 * static_cast<std::size_t>(node);
    array->SetTuple3(id++, components[first], components[first + 1], 0.0);
  }
  return array;
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
  const auto major = double_array(vtk_fields::major_stress.name, {}, count);
  const auto minor = double_array(vtk_fields::minor_stress.name, {}, count);
  const auto along_major = double_array(vtk_fields::major_direction.name, {"x", "y", "z"}, count);
  const auto along_minor = double_array(vtk_fields::minor_direction.name, {"x", "y", "z"}, count);
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
  auto array = double_array(vtk_fields::largest_crack_strain.name, {},
                            static_cast<vtkIdType>(strains.size()));
  for (std::size_t index = 0; index < strains.size(); ++index) {
    array->SetValue(static_cast<vtkIdType>(index), solver::principal_of(strains[index]).major);
  }
  return array;
}

void add_number(vtkFieldData* fields, const char* name, double value) {
  const auto array = double_array(name, {}, 1);
  array->SetValue(0, value);
  fields->AddArray(array);
}

void add_answers(vtkUnstructuredGrid* grid, const solver::PanelFields& fields,
                 const Present& present) {
  using Tensors = std::span<const solver::PlaneTensor>;
  const auto node_stress = only(Tensors(fields.node_stress), present.nodes);
  const auto quad_stress = only(Tensors(fields.quad_stress), present.quads);
  const auto crack_strain = only(Tensors(fields.quad_crack_strain), present.quads);
  vtkPointData* points = grid->GetPointData();
  points->SetVectors(vector_array(vtk_fields::displacement.name, fields.displacement, present));
  points->AddArray(tensor_array(vtk_fields::stress.name, node_stress));
  add_principal_stress(points, node_stress);
  vtkCellData* cells = grid->GetCellData();
  cells->AddArray(tensor_array(vtk_fields::mean_stress.name, quad_stress));
  cells->AddArray(tensor_array(vtk_fields::crack_strain.name, crack_strain));
  cells->AddArray(largest_crack_strain(crack_strain));
}

}  // namespace

vtkSmartPointer<vtkUnstructuredGrid> wall_grid(const solver::JobResult& result,
                                               const solver::StageResult& stage,
                                               const solver::PanelResult& analysis) {
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const solver::PanelFields& fields = analysis.fields;
  const Present present = present_in(mesh, fields.quad_out);
  auto grid = bare_grid(mesh, present);
  add_label(grid->GetFieldData(), vtk_fields::stage.name, stage.name);
  add_label(grid->GetFieldData(), vtk_fields::model.name, solver::to_string(analysis.model));
  add_number(grid->GetFieldData(), vtk_fields::thickness.name, result.job.thickness);
  if (is_staged(result)) add_number(grid->GetFieldData(), vtk_fields::day.name, stage.day);
  add_materials(grid->GetCellData(), result, stage, present);
  if (!fields.quad_loose.empty()) add_loose(grid->GetCellData(), fields.quad_loose, present);
  if (stage.safety && !stage.safety->mechanism.empty()) {
    grid->GetPointData()->AddArray(
        vector_array(vtk_fields::mechanism.name, stage.safety->mechanism, present));
  }
  if (!analysis.stands()) {
    add_label(grid->GetFieldData(), vtk_fields::no_equilibrium.name, *analysis.no_equilibrium);
    return grid;
  }
  add_answers(grid, fields, present);
  return grid;
}

}  // namespace deadshore::io
