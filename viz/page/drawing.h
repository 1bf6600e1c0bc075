#pragma once

#include "viz/page/page.h"

#include <functional>

namespace deadshore::viz {

class Canvas;

/// A drawing and the size of its page. The drawing may run more than once and draws the same each
/// time.
struct Drawing {
  Size size;  ///< points
  std::function<void(Canvas&)> draw;
};

}  // namespace deadshore::viz
