#pragma once

#include "solver/model/results.h"

#include <vtkPolyData.h>
#include <vtkSmartPointer.h>

namespace deadshore::io {

/// The supports as VTK points with their reactions; arrays as `write_vtk` describes them.
[[nodiscard]] vtkSmartPointer<vtkPolyData> support_points(const solver::JobResult& result);

}  // namespace deadshore::io
