#pragma once

#include "solver/result/results.h"

#include <vtkSmartPointer.h>
#include <vtkUnstructuredGrid.h>

namespace deadshore::io {

/// One analysis on its mesh as a VTK grid; arrays as `vtk_fields.h` names them.
[[nodiscard]] vtkSmartPointer<vtkUnstructuredGrid> wall_grid(const solver::JobResult& result,
                                                             const solver::StageResult& stage,
                                                             const solver::PanelResult& analysis);

}  // namespace deadshore::io
