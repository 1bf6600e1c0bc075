#pragma once

#include <string>

namespace deadshore::viz {

/// Why no window can be drawn here; empty where one can. VTK itself would abort: no X display, no
/// GLX, or fewer than 24 bits of colour.
[[nodiscard]] std::string fault_of_display();

}  // namespace deadshore::viz
