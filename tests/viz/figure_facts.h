#pragma once

#include "viz/figures.h"

#include <string>
#include <vector>

namespace deadshore::viz {

[[nodiscard]] std::vector<std::string> names_of(const std::vector<Figure>& figures);

/// Expects no text smaller than 7 points, off the page or into another one. Draws again, so the
/// figure's result must still be there.
void expect_clear_lettering(const Figure& figure);

/// Expects whole documents without numbers that are not finite, captions, clear
/// lettering, and pictures with some
/// ink, all of it on the page.
void expect_sound(const std::vector<Figure>& figures);

}  // namespace deadshore::viz
