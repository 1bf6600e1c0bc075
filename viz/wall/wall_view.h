#pragma once

#include "solver/job/job.h"
#include "viz/page/canvas.h"
#include "viz/page/labels.h"
#include "viz/wall/region.h"

#include <span>
#include <string>
#include <vector>

namespace deadshore::viz {

/// Where the wall stands on the page and at what scale.
struct WallView {
  double scale = 1.0;  ///< points per mm
  PagePoint origin;    ///< the wall's (0, 0) on the page

  [[nodiscard]] double across(double x) const { return origin.x + scale * x; }
  [[nodiscard]] double down(double y) const { return origin.y - scale * y; }
  [[nodiscard]] PagePoint at(mesh::Point p) const { return {across(p.x), down(p.y)}; }
  [[nodiscard]] Loop at(const Ring& ring) const;
  [[nodiscard]] std::vector<Loop> at(const Region& region) const;
  /// The wall's bounding box on the page.
  [[nodiscard]] Rect frame(const mesh::WallShape& wall) const;
};

/// Space round the wall, points.
struct Margins {
  double left = 0.0;
  double right = 0.0;
  double top = 0.0;
  double bottom = 0.0;
};

struct WallPage {
  Size size;
  WallView view;
};

/// The largest view of the wall on a page of the usual width and at most a usual height, in the
/// middle between the margins.
[[nodiscard]] WallPage fit_wall(const mesh::WallShape& wall, const Margins& margins);

/// A pitch of lines on the wall, mm: `pitch` doubled until lines are `least` points apart or more.
/// \throws std::invalid_argument unless all three are positive and finite
[[nodiscard]] double readable_pitch(double pitch, double scale, double least);

/// Widens the margins for a part of the wall that has moved out of its frame; `scale` as of the
/// wall's page, points per mm.
void add_room_for(const Region& moved, const mesh::WallShape& wall, double scale, Margins& margins);

/// Heading at the top left of a figure and, quietly at its right, the job's title.
void draw_heading(Canvas& canvas, const std::string& heading, const std::string& title,
                  double width = page_width);

/// Height that `draw_heading` takes.
inline constexpr double heading_height = 18.0;

/// A thick line at the base across the wall with short strokes under it.
void draw_ground(Canvas& canvas, const WallView& view, const mesh::WallShape& wall);

/// Hatched strips beside the ends that are held, from the soffit up.
void draw_held_ends(Canvas& canvas, const WallView& view, const solver::Job& job);

/// Width of those strips.
inline constexpr double held_strip = 8.0;

/// Lintels as tinted rectangles, or their outlines alone where something shows through.
enum class LintelStyle { filled, outline };
void draw_lintels(Canvas& canvas, const WallView& view, const mesh::WallShape& wall,
                  LintelStyle style);

/// The box of a needle seen end-on: as wide as its bearing, under the soffit.
[[nodiscard]] Rect needle_box(const WallView& view, const solver::Job& job,
                              const solver::Needle& needle);

/// An I-section, end-on.
void draw_needle_section(Canvas& canvas, const Rect& box);

/// What stands under a needle: its mark, a value (may be empty) and an upward arrow or none. A
/// needle that is not there is not drawn.
struct NeedleText {
  std::string mark;
  std::string value;
  bool arrow = false;
  bool there = true;
  double moved = 0.0;  ///< points that the needle has gone down
};

/// How needles' texts stand: at least `drop` points under the soffit, clear of what else hangs
/// there, and on white plates where there is masonry (which needles go through) or something else
/// behind them.
struct NeedleSetting {
  double drop = 0.0;
  bool on_masonry = false;
  bool on_plates = false;
};

/// Needles end-on with their texts, one for each needle; turned upright where they are tight.
void draw_needles(Canvas& canvas, const WallView& view, const solver::Job& job,
                  std::span<const NeedleText> texts, LabelRoom& room,
                  const NeedleSetting& setting = {});

/// Writes a text on a white plate at the first free place, and nothing if there is none.
bool draw_plate(Canvas& canvas, LabelRoom& room, const std::string& text, const TextStyle& style,
                std::span<const Rect> candidates);

/// Box of a plate with this text, its middle at `at`.
[[nodiscard]] Rect plate_box(PagePoint at, const std::string& text, const TextStyle& style);

/// A number with three figures, never an exponent: 0.0532, 3.1, 21.3, 133.
[[nodiscard]] std::string short_number(double value);

/// A force in kN with its unit: one decimal, two below 1 kN.
[[nodiscard]] std::string kilonewtons(double newtons);

/// Outline of the wall as it was before it moved.
inline const Pen before_pen{.colour = quiet_ink, .width = 0.6, .dash = {3.0, 2.0}};

}  // namespace deadshore::viz
