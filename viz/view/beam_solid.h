#pragma once

#include "viz/view/shown_result.h"

namespace deadshore::viz {

/// The permanent beam drawn where it lies between its bearings, of depth and length as in
/// supports.vtp and most of the wall's thickness, with its sag magnified. Its ends go down with the
/// wall under them. Null where it is not in.
[[nodiscard]] vtkSmartPointer<vtkPolyData> beam_solid(const ShownResult& result,
                                                      const ShownWall& wall, double magnification);

}  // namespace deadshore::viz
