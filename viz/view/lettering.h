#pragma once

#include "viz/page/palette.h"

#include <vtkTextProperty.h>

namespace deadshore::viz {

enum class Weight { plain, bold };

/// The view's letters, `size` pixels: DejaVu Sans where it is installed, else VTK's own.
void set_letters(vtkTextProperty* style, double size, Colour colour, Weight weight = Weight::plain);

}  // namespace deadshore::viz
