#pragma once

#include "solver/result/results.h"

#include <vtkPolyData.h>
#include <vtkSmartPointer.h>

namespace deadshore::io {

/// The permanent beam in one analysis of one stage as a VTK line along its axis, with moment,
/// shear, deflection and the load from its packing; arrays as `vtk_fields.h` names them. Without
/// points where the beam is not in by then, or the wall does not stand.
[[nodiscard]] vtkSmartPointer<vtkPolyData> beam_line(const solver::JobResult& result,
                                                     const solver::StageResult& stage,
                                                     const solver::PanelResult& analysis);

}  // namespace deadshore::io
