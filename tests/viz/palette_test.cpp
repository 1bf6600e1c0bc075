#include "viz/palette.h"

#include <cmath>

namespace deadshore::viz {
namespace {

/// CIE 1976 lightness of a relative luminance (CIE 015, from memory), 0 to 100.
double lightness(double luminance) {
  return luminance > 0.008856 ? 116.0 * std::cbrt(luminance) - 16.0 : 903.3 * luminance;
}

TEST(CompressionTone, DarkensEvenlySoThatGreyPrintKeepsTheOrder) {
  constexpr int steps = 9;
  std::vector<double> levels;
  for (int i = 0; i < steps; ++i)
    levels.push_back(lightness(luminance(compression_tone(i / (steps - 1.0)))));
  const double mean = (levels.front() - levels.back()) / (steps - 1);
  for (int i = 1; i < steps; ++i) {
    // Just told apart side by side needs about 2; half the mean step is well above that.
    EXPECT_GT(levels[i - 1] - levels[i], 0.5 * mean) << i;
    EXPECT_LT(levels[i - 1] - levels[i], 1.6 * mean) << i;
  }
  EXPECT_GT(mean, 7.0);
}

TEST(CompressionTone, StaysAtItsEndsOutsideTheScale) {
  EXPECT_DOUBLE_EQ(luminance(compression_tone(-1.0)), luminance(compression_tone(0.0)));
  EXPECT_DOUBLE_EQ(luminance(compression_tone(7.0)), luminance(compression_tone(1.0)));
}

TEST(Palette, MarksStandOutFromPaperInGrey) {
  // Contrast ratio of at least 4.5 for text (WCAG 2.1, 1.4.3).
  for (const Colour colour : {ink, quiet_ink, support})
    EXPECT_GT(1.05 / (luminance(colour) + 0.05), 4.5);
}

}  // namespace
}  // namespace deadshore::viz
