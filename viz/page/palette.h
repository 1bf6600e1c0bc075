#pragma once

namespace deadshore::viz {

/// A colour, each part 0 to 1 (sRGB).
struct Colour {
  double red = 0.0;
  double green = 0.0;
  double blue = 0.0;
};

inline constexpr Colour white{1.0, 1.0, 1.0};
inline constexpr Colour ink{0.11, 0.11, 0.13};
inline constexpr Colour quiet_ink{0.36, 0.36, 0.39};
inline constexpr Colour coursing{0.855, 0.835, 0.81};
inline constexpr Colour masonry_tint{0.975, 0.962, 0.94};
inline constexpr Colour lintel_tint{0.80, 0.81, 0.82};
inline constexpr Colour steel_tint{0.82, 0.86, 0.90};
inline constexpr Colour timber_tint{0.93, 0.84, 0.68};
/// Needles, supports and what they give: a dark blue that stays dark in grey.
inline constexpr Colour support{0.05, 0.27, 0.47};
/// Tension: a mid orange, told from compression by its lightness as well.
inline constexpr Colour tension{0.86, 0.42, 0.05};

/// Tone for a share of the scale, 0 to 1: cream through terracotta to dark maroon.
///
/// Lightness falls evenly (in OKLab: B. Ottosson, "A perceptual color space for image processing",
/// 2020; constants from memory, checked by the test of lightness), so the order holds in grey print
/// and for colour-blind readers.
[[nodiscard]] Colour compression_tone(double share);

/// Relative luminance (ITU-R BT.709 weights on linear light), 0 to 1.
[[nodiscard]] double luminance(Colour colour);

}  // namespace deadshore::viz
