#pragma once

#include "solver/model/results.h"

#include <vtkSmartPointer.h>
#include <vtkUnstructuredGrid.h>

namespace deadshore::io {

/// One analysis on its mesh as a VTK grid; arrays as `write_vtk` describes them.
[[nodiscard]] vtkSmartPointer<vtkUnstructuredGrid> wall_grid(const solver::JobResult& result,
                                                             const solver::StageResult& stage,
                                                             const solver::PanelResult& analysis);

}  // namespace deadshore::io
