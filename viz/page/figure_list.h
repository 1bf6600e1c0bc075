#pragma once

#include "viz/figures.h"
#include "viz/page/canvas.h"

#include <string>
#include <vector>

namespace deadshore::viz {

/// Figures in the order in which they are drawn, no two of one name.
class FigureList {
 public:
  /// Adds a figure. A name that is taken gets a number after it.
  void add(const Drawing& drawing, const std::string& name, const std::string& caption);

  /// Draws them all, as many at once as the machine has processors, and leaves the list empty.
  [[nodiscard]] std::vector<Figure> draw();

 private:
  std::vector<Figure> figures_;  ///< not drawn yet
};

}  // namespace deadshore::viz
