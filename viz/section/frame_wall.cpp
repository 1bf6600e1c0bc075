#include "viz/section/frame_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace deadshore::viz {
namespace {

const Pen edge_pen{.colour = ink, .width = 0.9};
const Pen steel_pen{.colour = support, .width = 0.8};

/// A strip of the wall with a break at its top, as a closed line.
Loop broken_strip(const FramePage& page, const mesh::Interval& strip, double soffit) {
  const double left = page.view.across(strip.from);
  const double right = page.view.across(strip.to);
  const double top = page.view.down(page.wall_top);
  const double middle = 0.5 * (left + right);
  const double kink = std::min(4.0, 0.25 * (right - left));
  const double bottom = page.view.down(soffit);
  return {{left, bottom},
          {left, top},
          {middle - kink, top},
          {middle - 0.3 * kink, top - kink},
          {middle + 0.3 * kink, top + kink},
          {middle + kink, top},
          {right, top},
          {right, bottom}};
}

void draw_steel(Canvas& canvas, const Rect& box, double scale, const solver::SteelMember& steel) {
  canvas.fill(box, steel_tint);
  const bool hollow = steel.section.is_hollow();
  const double skin = scale * (hollow ? steel.section.tw : steel.section.tf);
  if (skin > 0.3)
    canvas.strokes(
        std::array{PagePoint{box.left, box.top + skin}, PagePoint{box.right, box.top + skin},
                   PagePoint{box.left, box.bottom - skin}, PagePoint{box.right, box.bottom - skin}},
        {.colour = support,
         .width = 0.4,
         .dash = hollow ? std::vector<double>{2.0, 1.2} : std::vector<double>{}});
  canvas.outline(box, steel_pen);
}

void draw_timber(Canvas& canvas, const Rect& box) {
  canvas.fill(box, timber_tint);
  std::vector<PagePoint> grain;
  for (const double part : {0.25, 0.5, 0.75}) {
    const double y = box.top + part * box.height();
    grain.insert(grain.end(), {{box.left, y}, {box.right, y}});
  }
  canvas.strokes(grain, {.colour = quiet_ink, .width = 0.25, .dash = {9.0, 3.0}});
  canvas.outline(box, edge_pen);
}

std::string made_of(const solver::NeedleMember& member) {
  if (const auto* steel = std::get_if<solver::SteelMember>(&member))
    return steel->section.name + " " + solver::to_string(steel->grade);
  const auto& timber = std::get<solver::TimberMember>(member);
  return fmt::format("{:.0f} \u00d7 {:.0f} timber {}", timber.section.b, timber.section.h,
                     timber.strength_class.name);
}

/// Between the tubes of the props nearest the wall on either side, points.
double clear_width(const FramePage& page, const ShownFrame& shown) {
  mesh::Interval clear = shown.reach();
  for (const solver::NeedleProp& prop : shown.frame.props) {
    const double z = shown.place(prop);
    if (z < 0.0) clear.from = std::max(clear.from, z);
    if (z > 0.0) clear.to = std::min(clear.to, z);
  }
  return page.view.scale * clear.length() - 16.0;
}

}  // namespace

Hatch section_hatch() {
  return {.pen = {.colour = {0.62, 0.36, 0.24}, .width = 0.5}, .spacing = 3.6};
}

Pen beyond_pen() {
  return {.colour = quiet_ink, .width = 0.4, .dash = {3.0, 2.0}};
}

Pen wall_load_pen() {
  return {.colour = ink, .width = 0.8};
}

void draw_wall_section(Canvas& canvas, const FramePage& page, const ShownFrame& shown) {
  const double face = 0.5 * shown.wall_thickness;
  const double base = page.view.down(0.0);
  const double soffit = page.view.down(shown.soffit);
  for (const double z : {-face, face})
    canvas.line({page.view.across(z), soffit}, {page.view.across(z), base}, beyond_pen());
  for (const mesh::Interval& strip : solver::loaded_strips(shown.frame, shown.wall_thickness)) {
    const std::array outline{broken_strip(page, strip, shown.soffit)};
    canvas.fill(outline, masonry_tint);
    canvas.hatch(outline, section_hatch());
    canvas.outline(outline, edge_pen);
  }
}

void draw_wall_load(Canvas& canvas, const FramePage& page, const ShownFrame& shown,
                    LabelRoom& room) {
  if (!std::isfinite(shown.design.answer.wall_load)) return;
  constexpr double arrow_spacing = 8.0;
  const double tip = page.view.down(page.wall_top) - 5.5;
  const double tail = tip - 15.0;
  for (const mesh::Interval& strip : solver::loaded_strips(shown.frame, shown.wall_thickness)) {
    const double left = page.view.across(strip.from) + 1.0;
    const double right = page.view.across(strip.to) - 1.0;
    const int gaps = std::max(1, static_cast<int>(std::lround((right - left) / arrow_spacing)));
    for (int i = 0; i <= gaps; ++i) {
      const double x = left + (right - left) * i / gaps;
      canvas.arrow({x, tail}, {x, tip}, wall_load_pen());
    }
    canvas.line({left - 0.4, tail}, {right + 0.4, tail}, {.colour = ink, .width = 0.9});
  }
  const Rect words =
      canvas.text({page.view.across(0.0), tail - 1.5},
                  fmt::format("{} from the wall", kilonewtons(shown.design.answer.wall_load)),
                  {.size = 7.5, .bold = true}, {0.5, 1.0});
  room.take(words);
}

void draw_needle_side(Canvas& canvas, const FramePage& page, const ShownFrame& shown,
                      LabelRoom& room) {
  if (shown.frame.packing.thickness > 0.0)
    for (const mesh::Interval& strip : solver::loaded_strips(shown.frame, shown.wall_thickness)) {
      const Rect box{page.view.across(strip.from), page.view.down(shown.soffit),
                     page.view.across(strip.to), page.view.down(shown.needle_top())};
      canvas.fill(box, timber_tint);
      canvas.outline(box, {.colour = ink, .width = 0.6});
    }
  const Rect box{page.view.across(shown.reach().from), page.view.down(shown.needle_top()),
                 page.view.across(shown.reach().to), page.view.down(shown.needle_bottom())};
  const double face = 0.5 * shown.wall_thickness;
  room.take({page.view.across(-face), page.view.down(page.wall_top) - 25.0, page.view.across(face),
             box.bottom});
  room.take(box);
  if (const auto* steel = std::get_if<solver::SteelMember>(&shown.frame.member))
    draw_steel(canvas, box, page.view.scale, *steel);
  else
    draw_timber(canvas, box);
}

void name_needle(Canvas& canvas, const FramePage& page, const ShownFrame& shown, LabelRoom& room) {
  const TextStyle name_style{.size = 7.5,
                             .bold = true,
                             .colour = support,
                             .width = std::max(70.0, clear_width(page, shown)),
                             .overflow = Overflow::wrap};
  const TextStyle packing_style{.size = 7.0, .colour = quiet_ink};
  const double x = page.view.across(0.0);
  const double under = page.view.down(shown.needle_bottom());
  const std::string name =
      fmt::format("{}, {:.0f} long", made_of(shown.frame.member), shown.reach().length());
  const double half = 0.5 * text_size(name, name_style).height;
  const Rect start = plate_box({x, under + 4.0 + half}, name, name_style);
  draw_plate(canvas, room, name, name_style, boxes_around(start, {4.0, 5.0}, 24));
  if (shown.frame.packing.thickness <= 0.0) return;
  const std::string packing = fmt::format("packing {:.0f}", shown.frame.packing.thickness);
  const double face = page.view.across(0.5 * shown.wall_thickness);
  const Size size = text_size(packing, packing_style);
  const Rect beside = plate_box(
      {face + 4.0 + 0.5 * size.width, page.view.down(shown.needle_top()) - 0.5 * size.height - 1.0},
      packing, packing_style);
  draw_plate(canvas, room, packing, packing_style, boxes_around(beside, {4.0, 4.0}, 12));
}

}  // namespace deadshore::viz
