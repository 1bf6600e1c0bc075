#pragma once

#include "solver/result/results.h"

#include <vtkPolyData.h>
#include <vtkSmartPointer.h>

namespace deadshore::io {

/// The supports as VTK points with their reactions; arrays as `vtk_fields.h` names them.
[[nodiscard]] vtkSmartPointer<vtkPolyData> support_points(const solver::JobResult& result);

}  // namespace deadshore::io
