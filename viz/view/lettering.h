#pragma once

#include "viz/page/page.h"
#include "viz/page/palette.h"

#include <vtkNew.h>
#include <vtkRenderer.h>
#include <vtkSmartPointer.h>
#include <vtkTextActor.h>
#include <vtkTextProperty.h>

#include <array>
#include <string>
#include <vector>

namespace deadshore::viz {

enum class Weight { plain, bold };

/// The view's letters, `size` pixels: DejaVu Sans where it is installed, else VTK's own.
void set_letters(vtkTextProperty* style, double size, Colour colour, Weight weight = Weight::plain);

/// Names and figures that stand by places of a scene, over everything else, and keep off each other
/// however the scene is turned.
class StandingLabels {
 public:
  /// Drawn by the layer over the scene.
  explicit StandingLabels(vtkRenderer* over) : over_(over) {}

  void clear();

  /// A label that hangs on a place of the scene: below it, or beside it by `anchor`.
  void add(const std::array<double, 3>& at, const std::string& text, Colour colour, Anchor anchor);

  /// Puts each where it has room, as the scene is seen now: to be called before each drawing.
  void place(vtkRenderer* scene);

 private:
  struct Label {
    std::array<double, 3> at{};
    Anchor anchor;
    Size size;
    vtkSmartPointer<vtkTextActor> letters;
  };
  vtkRenderer* over_;
  std::vector<Label> labels_;
};

}  // namespace deadshore::viz
