#include "viz/section/frame_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace deadshore::viz {
namespace {

using solver::NeedleProp;
using solver::PropAction;
using solver::PropSide;

constexpr double plate = 1.4;        ///< head and base plates as drawn, points
constexpr double floor_depth = 9.0;  ///< of a suspended floor as drawn
const Pen tube_pen{.colour = support, .width = 0.6};
const Pen ground_pen{.colour = ink, .width = 1.2};

bool is_suspended(const NeedleProp& prop) {
  return !prop.footing.suspended_floor.empty();
}

/// Timber cut across the grain: a rectangle with its diagonals.
void draw_sole(Canvas& canvas, const Rect& box) {
  canvas.fill(box, timber_tint);
  canvas.strokes(std::array{PagePoint{box.left, box.top}, PagePoint{box.right, box.bottom},
                            PagePoint{box.left, box.bottom}, PagePoint{box.right, box.top}},
                 {.colour = quiet_ink, .width = 0.3});
  canvas.outline(box, {.colour = ink, .width = 0.6});
}

/// A rectangle between two heights on the page, whichever is higher.
Rect upright_box(double x, double width, double from, double to) {
  return {x - 0.5 * width, std::min(from, to), x + 0.5 * width, std::max(from, to)};
}

/// Ground from `left` to `right`: a thick line with strokes under it, or over it for what a prop is
/// wedged against.
void draw_firm(Canvas& canvas, double left, double right, double y, double under) {
  std::vector<PagePoint> strokes;
  for (double x = left + 4.0; x <= right; x += 6.0)
    strokes.insert(strokes.end(), {{x, y + under * 0.6}, {x - 4.0, y + under * 4.6}});
  canvas.strokes(strokes, {.colour = quiet_ink, .width = 0.4});
  canvas.line({left, y + under * 0.6}, {right, y + under * 0.6}, ground_pen);
}

/// A suspended floor: boards on joists over nothing.
void draw_floor(Canvas& canvas, double left, double right, double y) {
  const Rect joists{left, y + 2.2, right, y + floor_depth};
  canvas.fill({left, y, right, y + 2.2}, timber_tint);
  canvas.outline(Rect{left, y, right, y + 2.2}, {.colour = ink, .width = 0.8});
  canvas.outline(joists, {.colour = quiet_ink, .width = 0.5, .dash = {4.0, 2.0}});
}

/// A stretch of ground or floor under the props of one side.
struct Stretch {
  double from = 0.0;  ///< points
  double to = 0.0;
  double level = 0.0;  ///< mm
  bool floor = false;
};

/// The ground of one side from the page's margin to the wall's face, stepping half way between
/// props that stand at different levels.
std::vector<Stretch> stretches(const FramePage& page, const ShownFrame& shown, PropSide side) {
  const std::vector<NeedleProp> props = shown.standing(side);
  const double face =
      page.view.across((side == PropSide::inside ? 0.5 : -0.5) * shown.wall_thickness);
  double from = side == PropSide::inside ? face : 4.0;
  const double end = side == PropSide::inside ? page_width - 4.0 : face;
  std::vector<Stretch> found;
  for (std::size_t i = 0; i < props.size(); ++i) {
    const double to =
        i + 1 < props.size()
            ? page.view.across(0.5 * (shown.place(props[i]) + shown.place(props[i + 1])))
            : end;
    const bool floor = is_suspended(props[i]);
    if (!found.empty() && found.back().level == props[i].level && found.back().floor == floor)
      found.back().to = to;
    else
      found.push_back({from, to, props[i].level, floor});
    from = to;
  }
  return found;
}

std::string level_words(double level) {
  if (std::abs(level) < 0.5) return "level with the base";
  return fmt::format("{:.0f} {} the base", std::abs(level), level > 0.0 ? "above" : "below");
}

/// What is written under the outermost ground of a side.
std::string ground_words(const NeedleProp& prop) {
  const char* side = prop.side == PropSide::inside ? "inside" : "outside";
  const solver::Footing& footing = prop.footing;
  if (is_suspended(prop))
    return fmt::format("{}: {}, a suspended floor, NOT VERIFIED; {}", side, footing.suspended_floor,
                       level_words(prop.level));
  return fmt::format("{}: {}{}{}", side, footing.ground.name,
                     footing.ground.name.empty() ? "" : ", ", level_words(prop.level));
}

void draw_tubes(Canvas& canvas, const FramePage& page, const ShownFrame& shown,
                const NeedleProp& prop) {
  const bool up = prop.action == PropAction::up;
  const double sole = prop.footing.sole.timber.section.h;
  const double foot = prop.level + (up ? sole : -sole);
  const double head = up ? shown.needle_bottom() : shown.needle_top();
  const double outer_length = std::min(prop.prop.shortest, std::abs(head - foot));
  const double collar = foot + (up ? outer_length : -outer_length);
  const double x = page.view.across(shown.place(prop));
  const auto width = [&](double mm) { return std::max(1.6, page.view.scale * mm); };
  const auto tube = [&](double from, double to, double diameter) {
    const Rect box = upright_box(x, width(diameter), page.view.down(from), page.view.down(to));
    canvas.fill(box, white);
    canvas.outline(box, tube_pen);
  };
  tube(collar, head, prop.prop.inner.diameter);
  tube(foot, collar, prop.prop.outer.diameter);
  const double base = width(prop.footing.sole.prop_base);
  const double inwards = up ? -plate : plate;  // from the foot, on the page
  canvas.fill(upright_box(x, base, page.view.down(foot), page.view.down(foot) + inwards), support);
  canvas.fill(upright_box(x, base, page.view.down(head), page.view.down(head) - inwards), support);
  if (std::abs(head - collar) * page.view.scale > 2.0)
    canvas.fill(upright_box(x, width(prop.prop.outer.diameter) + 3.0, page.view.down(collar) - 1.0,
                            page.view.down(collar) + 1.0),
                support);
  draw_sole(canvas, upright_box(x, width(prop.footing.sole.timber.section.b),
                                page.view.down(prop.level), page.view.down(foot)));
}

/// Box of a prop on the page, from its foot to the needle.
Rect box_of(const FramePage& page, const ShownFrame& shown, const NeedleProp& prop) {
  const double needle = prop.action == PropAction::up ? shown.needle_bottom() : shown.needle_top();
  return upright_box(page.view.across(shown.place(prop)),
                     std::max(6.0, page.view.scale * prop.prop.outer.diameter) + 4.0,
                     page.view.down(prop.level), page.view.down(needle));
}

/// Whether no other prop stands between this one and the margin of its side.
bool is_outermost(const ShownFrame& shown, const NeedleProp& prop) {
  const std::vector<NeedleProp> standing = shown.standing(prop.side);
  if (prop.action == PropAction::down || standing.empty()) return false;
  const NeedleProp& last = prop.side == PropSide::inside ? standing.back() : standing.front();
  return shown.place(last) == shown.place(prop);
}

std::string particulars(const ShownFrame& shown, const NeedleProp& prop) {
  const solver::TimberSection& sole = prop.footing.sole.timber.section;
  return fmt::format(
      "{} prop: {}\nset to {:.0f}\nrange {:.0f} to {:.0f}\nsole {:.0f} \u00d7 {:.0f}", prop.mark,
      prop.prop.name, solver::extension_of(shown.frame, prop, shown.soffit), prop.prop.shortest,
      prop.prop.longest, sole.b, sole.h);
}

}  // namespace

Pen prop_load_pen() {
  return {.colour = support, .width = 1.1};
}

void draw_grounds(Canvas& canvas, const FramePage& page, const ShownFrame& shown) {
  for (const PropSide side : {PropSide::outside, PropSide::inside}) {
    const std::vector<Stretch> ground = stretches(page, shown, side);
    for (std::size_t i = 0; i < ground.size(); ++i) {
      const double y = page.view.down(ground[i].level);
      if (ground[i].floor)
        draw_floor(canvas, ground[i].from, ground[i].to, y);
      else
        draw_firm(canvas, ground[i].from, ground[i].to, y, 1.0);
      if (i + 1 < ground.size())
        canvas.line({ground[i].to, y}, {ground[i].to, page.view.down(ground[i + 1].level)},
                    ground_pen);
    }
  }
  const double face = 0.5 * shown.wall_thickness;
  draw_firm(canvas, page.view.across(-face), page.view.across(face), page.view.down(0.0), 1.0);
}

void draw_props(Canvas& canvas, const FramePage& page, const ShownFrame& shown) {
  for (const NeedleProp& prop : shown.frame.props) {
    draw_tubes(canvas, page, shown, prop);
    if (prop.action == PropAction::up) continue;
    const double x = page.view.across(shown.place(prop));
    const double half = page.view.scale * shown.half_foot(prop) + 7.0;
    draw_firm(canvas, x - half, x + half, page.view.down(prop.level), -1.0);
  }
}

void draw_prop_loads(Canvas& canvas, const FramePage& page, const ShownFrame& shown,
                     LabelRoom& room) {
  const double feet = page.view.down(page.deepest) + 25.0;
  for (std::size_t i = 0; i < shown.frame.props.size(); ++i) {
    const NeedleProp& prop = shown.frame.props[i];
    const bool up = prop.action == PropAction::up;
    const double away = up ? 1.0 : -1.0;
    const double x = page.view.across(shown.place(prop));
    const double level = page.view.down(prop.level);
    const bool floor = up && is_suspended(prop);
    const double tip = level + away * (floor ? floor_depth + 1.0 : 6.0);
    const double row = i < page.foot_rows.size() ? page.foot_rows[i] * foot_row : 0.0;
    const double tail = up ? feet + row : tip - 15.0;
    const std::string value = foot_value(shown, i);
    if (std::isfinite(shown.prop_load(i)) && shown.prop_load(i) > 0.0)
      canvas.arrow({x, tail}, {x, tip}, prop_load_pen());
    const Anchor hang{0.5, up ? 0.0 : 1.0};
    const double line = 0.9 * foot_mark_style.size + 2.0;
    const double upper = up ? tail + 0.5 : tail - 0.5 - line;
    room.take(canvas.text({x, upper}, prop.mark, foot_mark_style, hang));
    room.take(canvas.text({x, upper + line}, value, foot_value_style, hang));
  }
}

void name_props(Canvas& canvas, const FramePage& page, const ShownFrame& shown, LabelRoom& room) {
  const TextStyle style{.size = 7.0, .width = 80.0, .overflow = Overflow::wrap};
  for (const NeedleProp& prop : shown.frame.props) room.take(box_of(page, shown, prop));
  for (const NeedleProp& prop : shown.frame.props) {
    const std::string text = particulars(shown, prop);
    const Size size = text_size(text, style);
    const Rect box = box_of(page, shown, prop);
    const bool inside = prop.side == PropSide::inside;
    if (is_outermost(shown, prop)) {
      const double x = inside ? page.right_chain + 6.0 : page.left_chain - 14.0 - size.width;
      room.take(canvas.text({x, box.top + 0.3 * box.height()}, text, style, {0.0, 0.0}));
      const double under = is_suspended(prop) ? floor_depth + 2.0 : 6.5;
      const bool suspended = is_suspended(prop);
      const TextStyle ground{.size = 7.0,
                             .bold = suspended,
                             .colour = suspended ? ink : quiet_ink,
                             .width = 92.0,
                             .overflow = Overflow::wrap};
      room.take(canvas.text({inside ? page_width - 4.0 : 4.0, page.view.down(prop.level) + under},
                            ground_words(prop), ground, {inside ? 1.0 : 0.0, 0.0}));
      continue;
    }
    std::vector<Rect> places;
    for (const double part : {0.5, 0.35, 0.65, 0.2, 0.8})
      for (const double aside : {inside ? 1.0 : 0.0, inside ? 0.0 : 1.0})
        places.push_back(
            box_at({aside > 0.5 ? box.right + 3.0 : box.left - 3.0, box.top + part * box.height()},
                   {size.width + 4.0, size.height + 1.0}, {1.0 - aside, 0.5}));
    draw_plate(canvas, room, text, style, places);
  }
}

}  // namespace deadshore::viz
