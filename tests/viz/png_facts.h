#pragma once

#include "viz/page/page.h"

#include <string>

namespace deadshore::viz {

/// What can be told of a picture without knowing what it shows.
struct PngFacts {
  int width = 0;
  int height = 0;
  double dark_share = 0.0;   ///< part of the pixels darker than mid grey
  double inked_share = 0.0;  ///< part of the pixels that are not white
  Rect dark;                 ///< box round the dark pixels
};

/// Reads a PNG file's bytes by Cairo. \throws std::runtime_error if they are not a picture.
[[nodiscard]] PngFacts facts_of(const std::string& png);

}  // namespace deadshore::viz
