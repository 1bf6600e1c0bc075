#pragma once

#include <cairo.h>

#include <string>

namespace deadshore::viz {

/// A PNG file of a drawn surface of CAIRO_FORMAT_RGB24, packed for speed: a third of the time of
/// Cairo's own writer, for line drawings in files that are hardly larger.
///
/// \throws std::runtime_error with libpng's words
[[nodiscard]] std::string png_bytes(cairo_surface_t* surface);

}  // namespace deadshore::viz
