#include "viz/page/palette.h"

#include "viz/wall/bands.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

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

/// As a reader without red cones, or without green ones, sees it: G. Machado, M. Oliveira &
/// L. Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency", 2009,
/// severity 1.0 (matrices from memory, unverified; rows add up to 1, so greys stay greys).
using Matrix = std::array<std::array<double, 3>, 3>;
constexpr Matrix without_red{{{0.152286, 1.052583, -0.204868},
                              {0.114503, 0.786281, 0.099216},
                              {-0.003882, -0.048116, 1.051998}}};
constexpr Matrix without_green{{{0.367322, 0.860646, -0.227968},
                                {0.280085, 0.672501, 0.047413},
                                {-0.011820, 0.042940, 0.968881}}};

double linear(double part) {
  return part <= 0.04045 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4);
}

/// CIE L* of a colour as seen through such eyes.
double lightness_seen(Colour colour, const Matrix& eyes) {
  const std::array given{linear(colour.red), linear(colour.green), linear(colour.blue)};
  std::array<double, 3> seen{};
  for (std::size_t i = 0; i < 3; ++i)
    for (std::size_t k = 0; k < 3; ++k) seen[i] += eyes[i][k] * given[k];
  for (double& part : seen) part = std::clamp(part, 0.0, 1.0);
  return lightness(0.2126 * seen[0] + 0.7152 * seen[1] + 0.0722 * seen[2]);
}

TEST(CompressionTone, OfEveryScaleStepsEvenlyInLightness) {
  for (double value = 0.11; value < 1.0; value *= 1.1) {
    const BandScale scale = even_scale(value);
    std::vector<double> levels;
    for (int band = 0; band <= scale.count; ++band)
      levels.push_back(lightness(luminance(band_tone(band, scale))));
    const double mean = (levels.front() - levels.back()) / scale.count;
    EXPECT_GT(mean, 8.0) << scale.count;  // well over what is just told apart side by side, 2
    for (std::size_t i = 1; i < levels.size(); ++i) {
      EXPECT_GT(levels[i - 1] - levels[i], 0.8 * mean) << scale.count << " bands, " << i;
      EXPECT_LT(levels[i - 1] - levels[i], 1.2 * mean) << scale.count << " bands, " << i;
    }
  }
}

TEST(CompressionTone, KeepsItsOrderForColourBlindReaders) {
  for (const Matrix& eyes : {without_red, without_green}) {
    double before = lightness_seen(compression_tone(0.0), eyes);
    for (int i = 1; i <= 8; ++i) {
      const double level = lightness_seen(compression_tone(i / 8.0), eyes);
      EXPECT_GT(before - level, 4.0) << i;  // twice what is just told apart
      before = level;
    }
  }
}

TEST(Palette, TensionIsToldFromCompressionAndSupportsByLightnessAlone) {
  for (const Matrix& eyes : {without_red, without_green})
    for (const Colour dark : {ink, support})
      EXPECT_GT(lightness_seen(tension, eyes) - lightness_seen(dark, eyes), 15.0);
  EXPECT_GT(lightness(luminance(tension)) - lightness(luminance(support)), 20.0);
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
