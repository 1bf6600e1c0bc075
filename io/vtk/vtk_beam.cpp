#include "io/vtk/vtk_arrays.h"
#include "io/vtk/vtk_fields.h"
#include "io/vtk/vtk_parts.h"
#include "solver/job/beam_places.h"
#include "solver/study/stage_facts.h"

#include <vtkCellArray.h>
#include <vtkPointData.h>
#include <vtkPoints.h>

#include <vector>

namespace deadshore::io {
namespace {

void add_values(vtkPointData* points, const std::vector<solver::BeamStation>& stations) {
  const auto count = static_cast<vtkIdType>(stations.size());
  const auto displacement =
      double_array(vtk_fields::beam_displacement.name, {"x", "y", "z"}, count);
  const auto moment = double_array(vtk_fields::beam_moment.name, {}, count);
  const auto shear = double_array(vtk_fields::beam_shear.name, {}, count);
  const auto deflection = double_array(vtk_fields::beam_deflection.name, {}, count);
  const auto packing = double_array(vtk_fields::packing.name, {}, count);
  vtkIdType index = 0;
  for (const solver::BeamStation& at : stations) {
    displacement->SetTuple3(index, 0.0, -at.deflection, 0.0);
    moment->SetValue(index, at.moment / 1e6);
    shear->SetValue(index, at.shear / 1e3);
    deflection->SetValue(index, at.deflection);
    packing->SetValue(index, at.packing);  // N/mm is kN/m
    ++index;
  }
  points->SetVectors(displacement);
  for (const auto& values : {moment, shear, deflection, packing}) points->AddArray(values);
}

}  // namespace

vtkSmartPointer<vtkPolyData> beam_line(const solver::JobResult& result,
                                       const solver::StageResult& stage,
                                       const solver::PanelResult& analysis) {
  auto shape = vtkSmartPointer<vtkPolyData>::New();
  if (!result.job.beam || !analysis.stands() || !analysis.beam) return shape;
  const std::vector<solver::BeamStation>& stations = analysis.beam->stations;
  if (stations.empty()) return shape;

  const mesh::Interval height = solver::places_of_beam(result.job).beam.y;
  const vtkNew<vtkPoints> points;
  points->SetDataTypeToDouble();
  const vtkNew<vtkCellArray> lines;
  lines->InsertNextCell(static_cast<int>(stations.size()));
  for (const solver::BeamStation& at : stations) {
    lines->InsertCellPoint(points->InsertNextPoint(at.x, 0.5 * (height.from + height.to), 0.0));
  }
  shape->SetPoints(points);
  shape->SetLines(lines);
  add_values(shape->GetPointData(), stations);
  add_label(shape->GetFieldData(), vtk_fields::stage.name, stage.name);
  add_label(shape->GetFieldData(), vtk_fields::model.name, solver::to_string(analysis.model));
  return shape;
}

}  // namespace deadshore::io
