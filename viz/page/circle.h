#pragma once

#include "viz/page/page.h"

namespace deadshore::viz {

/// A circle as a closed line of short sides.
[[nodiscard]] Loop circle_at(PagePoint middle, double radius);

}  // namespace deadshore::viz
