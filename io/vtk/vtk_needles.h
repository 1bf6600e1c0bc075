#pragma once

#include "solver/result/results.h"

#include <vtkPolyData.h>
#include <vtkSmartPointer.h>

namespace deadshore::io {

/// The needles that have frames and their props as VTK lines with moment, shear and deflection;
/// arrays as `vtk_fields.h` names them. Without points where the job has no frames.
[[nodiscard]] vtkSmartPointer<vtkPolyData> needle_lines(const solver::JobResult& result);

}  // namespace deadshore::io
