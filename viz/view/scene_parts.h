#pragma once

#include "viz/page/palette.h"
#include "viz/view/shown_field.h"
#include "viz/view/solids.h"

#include <vtkActor.h>
#include <vtkLookupTable.h>
#include <vtkPolyData.h>
#include <vtkSmartPointer.h>

#include <array>

/// Single actors, made ready to be added to a renderer.
namespace deadshore::viz {

inline constexpr Colour backdrop{0.885, 0.905, 0.925};
/// Masonry that no field colours: stands out from the backdrop, as the figures' tint would not.
inline constexpr Colour plain_masonry{0.93, 0.86, 0.76};
inline constexpr Colour alarm{0.70, 0.05, 0.05};

/// One tone for each band of the scale.
[[nodiscard]] vtkSmartPointer<vtkLookupTable> tones_of(const FieldScale& scale);

/// A surface in one colour.
[[nodiscard]] vtkSmartPointer<vtkActor> plain_actor(vtkPolyData* surface, Colour colour);

/// A surface in the bands of a field; all of one colour where it does not have that field.
[[nodiscard]] vtkSmartPointer<vtkActor> banded_actor(vtkPolyData* surface, const ShownField& field);

/// Lines of so many pixels, which are not to be picked.
[[nodiscard]] vtkSmartPointer<vtkActor> line_actor(vtkPolyData* lines, Colour colour, double width);

/// A round bar from end to end, mm.
[[nodiscard]] vtkSmartPointer<vtkActor> bar_actor(const std::array<double, 3>& from,
                                                  const std::array<double, 3>& to, double radius,
                                                  Colour colour);

[[nodiscard]] vtkSmartPointer<vtkActor> ball_actor(const std::array<double, 3>& at, double radius,
                                                   Colour colour);

/// An arrow that presses on `tip` from `length` mm away along (x, y), both of size 1.
[[nodiscard]] vtkSmartPointer<vtkActor> arrow_actor(const std::array<double, 3>& tip,
                                                    const std::array<double, 2>& along,
                                                    double length, double radius, Colour colour);

}  // namespace deadshore::viz
