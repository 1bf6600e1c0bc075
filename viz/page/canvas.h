#pragma once

#include "viz/page/drawing.h"
#include "viz/page/page.h"
#include "viz/page/palette.h"

#include <cairo.h>

#include <functional>
#include <span>
#include <string>
#include <vector>

namespace deadshore::viz {

/// How a line is drawn.
struct Pen {
  Colour colour = ink;
  double width = 0.6;             ///< points
  std::vector<double> dash = {};  ///< points drawn, points left out, ...; empty for a full line
};

/// What becomes of a text that is wider than it may be.
enum class Overflow {
  wrap,        ///< it goes on in further lines
  cut_end,     ///< its end becomes an ellipsis
  cut_middle,  ///< its middle becomes an ellipsis
};

/// Upright text in DejaVu Sans. Nothing in a figure is smaller than 7 points.
struct TextStyle {
  double size = 7.5;  ///< points
  bool bold = false;
  Colour colour = ink;
  double width = 0.0;  ///< the most it may take, points; 0 for no limit
  Overflow overflow = Overflow::cut_end;
};

/// Size that a text takes on the page, points.
/// \throws std::runtime_error if no font is installed.
[[nodiscard]] Size text_size(const std::string& text, const TextStyle& style);

/// A text as it was written on a page: for tests of what a figure says and where.
struct Lettering {
  std::string text;
  double size = 0.0;  ///< points
  Rect ink;           ///< round its letters
};

/// How an area is hatched.
struct Hatch {
  Pen pen;               ///< of its lines
  double spacing = 4.0;  ///< points between lines
  double angle = 45.0;   ///< degrees, anticlockwise from the horizontal as seen
};

/// Draws on a page by Cairo, in points from its top left corner. Closed lines are filled even-odd.
/// Bound to a Cairo context that outlives it; made by `to_svg`, `to_pdf` and
/// `to_png`, and by `lettering_of`, which wants to know of each text.
/// \code
/// const Drawing sketch{{200.0, 60.0}, [](Canvas& canvas) {
///   canvas.outline(Rect{20.0, 5.0, 180.0, 40.0}, Pen{.width = 1.2});
///   canvas.arrow({100.0, 58.0}, {100.0, 41.0}, Pen{});
///   canvas.text({104.0, 50.0}, "21.3 kN", TextStyle{}, Anchor{0.0, 0.5});
/// }};
/// const std::string svg = to_svg(sketch);
/// for (const Lettering& text : lettering_of(sketch)) {
///   fmt::print("{}, {} points, in {}\n", text.text, text.size, svg.substr(0, 5));
/// }
/// \endcode
class Canvas {
 public:
  /// \param lettering gets every text that is written; may be null
  explicit Canvas(cairo_t* context, std::vector<Lettering>* lettering = nullptr)
      : context_(context), lettering_(lettering) {}

  /// Draws a straight line.
  void line(PagePoint from, PagePoint to, const Pen& pen);
  /// Draws separate lines: points 0-1, 2-3, ... in one path.
  void strokes(std::span<const PagePoint> ends, const Pen& pen);
  /// Draws a polyline: its dashes run on past its points.
  void path(std::span<const PagePoint> points, const Pen& pen);
  /// Draws closed lines.
  void outline(std::span<const Loop> loops, const Pen& pen);
  /// Fills areas; `opacity` 0 to 1.
  void fill(std::span<const Loop> loops, Colour colour, double opacity = 1.0);
  /// Hatches areas.
  void hatch(std::span<const Loop> loops, const Hatch& hatch);
  /// Runs `inside` with everything it draws cut off at the loops.
  void clipped(std::span<const Loop> loops, const std::function<void()>& inside);

  void fill(const Rect& box, Colour colour, double opacity = 1.0);
  void outline(const Rect& box, const Pen& pen);

  /// Draws an arrow: a line with a filled head at `tip`; one shorter than the head is all head.
  void arrow(PagePoint from, PagePoint tip, const Pen& pen);

  /// Writes a text so that its box has `anchor` on `at`; returns the box.
  Rect text(PagePoint at, const std::string& text, const TextStyle& style, Anchor anchor);
  /// The same turned a quarter anticlockwise: it reads upwards. `anchor` is that of the turned box.
  Rect upright_text(PagePoint at, const std::string& text, const TextStyle& style, Anchor anchor);

 private:
  void set(const Pen& pen);
  void trace(std::span<const Loop> loops);

  cairo_t* context_;
  std::vector<Lettering>* lettering_;  ///< null where nobody asks
};

/// The closed line round a box.
[[nodiscard]] Loop loop_of(const Rect& box);

/// A self-contained SVG document on white, text as outlines. The same drawing gives the same bytes.
[[nodiscard]] std::string to_svg(const Drawing& drawing);

/// A PDF document of one page, text searchable. The same drawing gives the same bytes.
[[nodiscard]] std::string to_pdf(const Drawing& drawing);

/// Every text of a drawing in the order in which they are written.
[[nodiscard]] std::vector<Lettering> lettering_of(const Drawing& drawing);

/// Bytes of a PNG file on white, `pixels` wide.
[[nodiscard]] std::string to_png(const Drawing& drawing, int pixels);

}  // namespace deadshore::viz
