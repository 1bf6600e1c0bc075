#pragma once

#include "viz/figures.h"

#include <string>
#include <vector>

namespace deadshore::viz {

[[nodiscard]] std::vector<std::string> names_of(const std::vector<Figure>& figures);

/// Expects whole documents without numbers that are not finite, captions, and pictures with some
/// ink, all of it on the page.
void expect_sound(const std::vector<Figure>& figures);

}  // namespace deadshore::viz
