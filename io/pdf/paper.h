#pragma once

#include "viz/page/palette.h"

/// Measures and colours of the note on paper: those of its style sheet (io/document/document.css),
/// in points.
namespace deadshore::io::paper {

inline constexpr double millimetre = 72.0 / 25.4;
inline constexpr double short_side = 210.0 * millimetre;  ///< A4
inline constexpr double long_side = 297.0 * millimetre;

/// Margins of a portrait page, and of a landscape one.
struct Margins {
  double side = 0.0;
  double top = 0.0;
  double bottom = 0.0;
};
inline constexpr Margins portrait_margins{15.0 * millimetre, 15.0 * millimetre, 19.0 * millimetre};
inline constexpr Margins landscape_margins{10.0 * millimetre, 10.0 * millimetre, 16.0 * millimetre};
inline constexpr double text_width = short_side - 2.0 * portrait_margins.side;
inline constexpr double text_height = long_side - portrait_margins.top - portrait_margins.bottom;
inline constexpr double landscape_width = long_side - 2.0 * landscape_margins.side;
inline constexpr double landscape_height =
    short_side - landscape_margins.top - landscape_margins.bottom;

inline constexpr viz::Colour ink{0.110, 0.129, 0.149};
inline constexpr viz::Colour faint{0.353, 0.388, 0.420};
inline constexpr viz::Colour line{0.788, 0.812, 0.831};
inline constexpr viz::Colour shade{0.949, 0.957, 0.961};
inline constexpr viz::Colour alarm{0.639, 0.086, 0.114};
inline constexpr viz::Colour alarm_shade{0.992, 0.933, 0.933};
inline constexpr viz::Colour warning{0.541, 0.353, 0.0};
inline constexpr viz::Colour warning_shade{0.992, 0.961, 0.894};

inline constexpr double body_size = 9.5;
inline constexpr double leading = 1.42;  ///< line to line, of the size
inline constexpr double bar_width = 3.75;

}  // namespace deadshore::io::paper
