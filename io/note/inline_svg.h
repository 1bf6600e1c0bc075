#pragma once

#include "io/note/html.h"

#include <string_view>

namespace deadshore::io {

/// An SVG document as part of a page: without what comes before its root element, and with `prefix`
/// put before every id and every reference to one, so that figures cannot take each other's glyphs
/// and clips. `label` is what a screen reader says. Empty where there is no <svg> element.
[[nodiscard]] Html inline_svg(std::string_view svg, std::string_view prefix,
                              std::string_view label);

}  // namespace deadshore::io
