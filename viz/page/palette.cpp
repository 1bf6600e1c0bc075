#include "viz/page/palette.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace deadshore::viz {
namespace {

double encoded(double linear) {
  const double value = std::clamp(linear, 0.0, 1.0);
  return value <= 0.0031308 ? 12.92 * value : 1.055 * std::pow(value, 1.0 / 2.4) - 0.055;
}

double decoded(double value) {
  return value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
}

Colour from_oklch(double lightness, double chroma, double hue) {
  const double a = chroma * std::cos(hue);
  const double b = chroma * std::sin(hue);
  const double l = std::pow(lightness + 0.3963377774 * a + 0.2158037573 * b, 3.0);
  const double m = std::pow(lightness - 0.1055613458 * a - 0.0638541728 * b, 3.0);
  const double s = std::pow(lightness - 0.0894841775 * a - 1.2914855480 * b, 3.0);
  return {encoded(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
          encoded(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
          encoded(-0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s)};
}

}  // namespace

Colour compression_tone(double share) {
  const double t = std::clamp(share, 0.0, 1.0);
  constexpr double degree = std::numbers::pi / 180.0;
  const double lightness = 0.975 - 0.655 * t;
  const double chroma = 0.022 + 0.40 * t * (1.0 - 0.80 * t);
  const double hue = (92.0 - 72.0 * t) * degree;
  return from_oklch(lightness, chroma, hue);
}

double luminance(Colour colour) {
  return 0.2126 * decoded(colour.red) + 0.7152 * decoded(colour.green) +
         0.0722 * decoded(colour.blue);
}

}  // namespace deadshore::viz
