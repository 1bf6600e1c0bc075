#pragma once

#include "solver/result/results.h"

#include <vtkPolyData.h>
#include <vtkSmartPointer.h>
#include <vtkUnstructuredGrid.h>
namespace deadshore::io {

/// One analysis on its mesh as a VTK grid; arrays as `vtk_fields.h` names them.
[[nodiscard]] vtkSmartPointer<vtkUnstructuredGrid> wall_grid(const solver::JobResult& result,
                                                             const solver::StageResult& stage,
                                                             const solver::PanelResult& analysis);

/// The supports as VTK points with their reactions; arrays as `vtk_fields.h` names them.
[[nodiscard]] vtkSmartPointer<vtkPolyData> support_points(const solver::JobResult& result);

/// The needles that have frames and their props as VTK lines with moment, shear and deflection;
/// arrays as `vtk_fields.h` names them. Without points where the job has no frames.
[[nodiscard]] vtkSmartPointer<vtkPolyData> needle_lines(const solver::JobResult& result);

/// The permanent beam in one analysis of one stage as a VTK line along its axis, with moment,
/// shear, deflection and the load from its packing; arrays as `vtk_fields.h` names them. Without
/// points where the beam is not in by then, or the wall does not stand.
[[nodiscard]] vtkSmartPointer<vtkPolyData> beam_line(const solver::JobResult& result,
                                                     const solver::StageResult& stage,
                                                     const solver::PanelResult& analysis);

}  // namespace deadshore::io
