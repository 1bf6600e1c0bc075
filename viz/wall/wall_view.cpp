#include "viz/wall/wall_view.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <stdexcept>

namespace deadshore::viz {
namespace {

constexpr double usual_height = 590.0;  ///< leaves room for a caption on an A4 page
constexpr double least_share = 0.25;    ///< of the usual page, for the wall itself
const Pen outline_pen{.colour = ink, .width = 0.7};

/// An I-section seen end-on in the box.
Loop section_loop(const Rect& box) {
  const double flange = 0.17 * box.height();
  const double half_web = std::max(0.5, 0.09 * box.width());
  const double x = box.middle().x;
  return {{box.left, box.top},
          {box.right, box.top},
          {box.right, box.top + flange},
          {x + half_web, box.top + flange},
          {x + half_web, box.bottom - flange},
          {box.right, box.bottom - flange},
          {box.right, box.bottom},
          {box.left, box.bottom},
          {box.left, box.bottom - flange},
          {x - half_web, box.bottom - flange},
          {x - half_web, box.top + flange},
          {box.left, box.top + flange}};
}

const TextStyle value_style{
    .size = 7.5, .colour = support, .width = 80.0, .overflow = Overflow::cut_middle};
const TextStyle mark_style{.size = 7.5, .bold = true, .colour = support, .width = 80.0};

std::string one_line(const NeedleText& text) {
  return text.value.empty() ? text.mark : text.mark + " " + text.value;
}

/// What the longest upright text leaves for arrows between needles and ground, at least 1 point.
double room_over_ground(const WallView& view, const solver::Job& job,
                        std::span<const NeedleText> texts) {
  double room = view.scale * job.wall.cut.soffit;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    if (!texts[i].there) continue;
    room = std::min(room, view.down(0.0) - needle_box(view, job, job.needles[i]).bottom - 3.0 -
                              text_size(one_line(texts[i]), value_style).width);
  }
  return std::max(1.0, room);
}

/// Whether the needles' texts must be turned because level they would run into each other or a
/// jamb.
bool must_stand(const WallView& view, const solver::Job& job, std::span<const NeedleText> texts) {
  double last = view.across(job.wall.cut.left);
  std::vector<std::size_t> order(job.needles.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return job.needles[a].x < job.needles[b].x; });
  for (const std::size_t i : order) {
    if (!texts[i].there) continue;
    const double half = 0.5 * std::max(text_size(texts[i].mark, mark_style).width,
                                       text_size(texts[i].value, value_style).width);
    const double x = view.across(job.needles[i].x);
    if (x - half < last + 1.5) return true;
    last = x + half;
  }
  return last + 1.5 > view.across(job.wall.cut.right);
}

/// A text under a needle, level or upright, on a white plate if there is something behind it.
Rect write_at(Canvas& canvas, PagePoint at, const std::string& text, const TextStyle& style,
              bool upright, bool plate) {
  const Size size = text_size(text, style);
  if (plate) {
    const Size shown = upright ? Size{size.height, size.width} : size;
    canvas.fill(box_at(at, shown, {0.5, 0.0}), white, 0.85);
  }
  return upright ? canvas.upright_text(at, text, style, {0.5, 0.0})
                 : canvas.text(at, text, style, {0.5, 0.0});
}

void write_needle_text(Canvas& canvas, PagePoint foot, const NeedleText& text, bool upright,
                       bool plate, LabelRoom& room) {
  if (upright) {
    room.take(write_at(canvas, foot, one_line(text), value_style, true, plate));
    return;
  }
  const Rect mark = write_at(canvas, foot, text.mark, mark_style, false, plate);
  room.take(mark);
  if (text.value.empty()) return;
  room.take(write_at(canvas, {foot.x, mark.bottom}, text.value, value_style, false, plate));
}

}  // namespace

Loop WallView::at(const Ring& ring) const {
  Loop loop;
  loop.reserve(ring.size());
  for (const mesh::Point& point : ring) loop.push_back(at(point));
  return loop;
}

std::vector<Loop> WallView::at(const Region& region) const {
  std::vector<Loop> loops;
  loops.reserve(region.size());
  for (const Ring& ring : region) loops.push_back(at(ring));
  return loops;
}

Rect WallView::frame(const mesh::WallShape& wall) const {
  return {across(0.0), down(wall.height()), across(wall.length), down(0.0)};
}

WallPage fit_wall(const mesh::WallShape& wall, const Margins& margins) {
  // Labels that leave the wall too little room make the page larger, not the wall a line.
  const double wide = std::max(page_width - margins.left - margins.right, least_share * page_width);
  const double high =
      std::max(usual_height - margins.top - margins.bottom, least_share * usual_height);
  WallPage page;
  page.view.scale = std::min(wide / wall.length, high / wall.height());
  page.view.origin.x = margins.left + 0.5 * (wide - page.view.scale * wall.length);
  page.view.origin.y = margins.top + page.view.scale * wall.height();
  page.size = {margins.left + wide + margins.right, page.view.origin.y + margins.bottom};
  return page;
}

double readable_pitch(double pitch, double scale, double least) {
  const double apart = pitch * scale;
  if (!(apart > 0.0 && least > 0.0) || !std::isfinite(apart) || !std::isfinite(least)) {
    throw std::invalid_argument(
        fmt::format("lines {} mm apart cannot be drawn at {} points a mm", pitch, scale));
  }
  return std::ldexp(pitch, std::max(0, static_cast<int>(std::ceil(std::log2(least / apart)))));
}

void add_room_for(const Region& moved, const mesh::WallShape& wall, double scale,
                  Margins& margins) {
  Rect past;  // how far, mm
  for (const Ring& ring : moved)
    for (const mesh::Point& point : ring) {
      past.left = std::max(past.left, -point.x);
      past.right = std::max(past.right, point.x - wall.length);
      past.top = std::max(past.top, point.y - wall.height());
    }
  margins.left += scale * past.left;
  margins.right += scale * past.right;
  margins.top += scale * past.top;
}

void draw_heading(Canvas& canvas, const std::string& heading, const std::string& title,
                  double width) {
  const Rect box = canvas.text(
      {4.0, 2.0}, heading,
      {.size = 9.0, .bold = true, .width = width - 8.0, .overflow = Overflow::cut_middle},
      {0.0, 0.0});
  const double room = width - box.right - 24.0;
  if (room > 60.0 && !title.empty())
    canvas.text({width - 4.0, 3.5}, title, {.size = 7.0, .colour = quiet_ink, .width = room},
                {1.0, 0.0});
}

void draw_ground(Canvas& canvas, const WallView& view, const mesh::WallShape& wall) {
  const double left = view.across(0.0) - 10.0;
  const double right = view.across(wall.length) + 10.0;
  const double y = view.down(0.0);
  std::vector<PagePoint> strokes;
  for (double x = left + 4.0; x <= right; x += 6.0)
    strokes.insert(strokes.end(), {{x, y + 0.6}, {x - 4.0, y + 4.6}});
  canvas.strokes(strokes, {.colour = quiet_ink, .width = 0.4});
  canvas.line({left, y + 0.6}, {right, y + 0.6}, {.colour = ink, .width = 1.2});
}

void draw_held_ends(Canvas& canvas, const WallView& view, const solver::Job& job) {
  const auto strip = [&](double x, double top, double side) {
    const Rect box{std::min(view.across(x), view.across(x) + side * held_strip), view.down(top),
                   std::max(view.across(x), view.across(x) + side * held_strip),
                   view.down(job.wall.cut.soffit)};
    canvas.hatch(std::array{loop_of(box)}, {.pen = {.colour = ink, .width = 0.5}, .spacing = 3.2});
    canvas.line({view.across(x), box.top}, {view.across(x), box.bottom}, {.width = 1.4});
  };
  if (job.left_end == solver::WallEnd::held) strip(0.0, job.wall.top_at(0.0), -1.0);
  if (job.right_end == solver::WallEnd::held)
    strip(job.wall.length, job.wall.top_at(job.wall.length), 1.0);
}

void draw_lintels(Canvas& canvas, const WallView& view, const mesh::WallShape& wall,
                  LintelStyle style) {
  for (const mesh::LintelShape& lintel : wall.lintels) {
    const mesh::LintelExtent extent = mesh::extent_of(lintel, wall);
    const Rect box{view.across(extent.x.from), view.down(extent.y.to), view.across(extent.x.to),
                   view.down(extent.y.from)};
    if (style == LintelStyle::filled) canvas.fill(box, lintel_tint);
    canvas.outline(box, outline_pen);
  }
}

Rect needle_box(const WallView& view, const solver::Job& job, const solver::Needle& needle) {
  const double width = std::max(4.0, view.scale * needle.bearing_width);
  const double top = view.down(job.wall.cut.soffit) + 0.6;
  const double x = view.across(needle.x);
  return {x - 0.5 * width, top, x + 0.5 * width, top + std::clamp(1.1 * width, 6.0, 14.0)};
}

void draw_needle_section(Canvas& canvas, const Rect& box) {
  canvas.fill(std::array{section_loop(box)}, support);
}

void draw_needles(Canvas& canvas, const WallView& view, const solver::Job& job,
                  std::span<const NeedleText> texts, LabelRoom& room,
                  const NeedleSetting& setting) {
  const bool upright = must_stand(view, job, texts);
  const bool any_arrow =
      std::any_of(texts.begin(), texts.end(), [](const NeedleText& text) { return text.arrow; });
  const double soffit = view.down(job.wall.cut.soffit);
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    if (!texts[i].there) continue;
    Rect box = needle_box(view, job, job.needles[i]);
    box.top += texts[i].moved;
    box.bottom += texts[i].moved;
    const double level_shaft = std::max(any_arrow ? 20.0 : 1.0, soffit + setting.drop - box.bottom);
    const double shaft =
        upright ? std::min(level_shaft, room_over_ground(view, job, texts)) : level_shaft;
    const PagePoint foot{box.middle().x, box.bottom + shaft + 1.0};
    if (setting.on_masonry) canvas.fill(box, white);
    draw_needle_section(canvas, box);
    if (texts[i].arrow && shaft > 6.0)
      canvas.arrow({foot.x, foot.y - 1.0}, {foot.x, box.bottom + 1.0},
                   {.colour = support, .width = 1.1});
    room.take({box.left, box.top, box.right, foot.y});
    write_needle_text(canvas, foot, texts[i], upright, setting.on_masonry || setting.on_plates,
                      room);
  }
}

Rect plate_box(PagePoint at, const std::string& text, const TextStyle& style) {
  const Size size = text_size(text, style);
  return box_at(at, {size.width + 4.0, size.height + 1.0}, {});
}

bool draw_plate(Canvas& canvas, LabelRoom& room, const std::string& text, const TextStyle& style,
                std::span<const Rect> candidates) {
  const auto place = room.place(candidates);
  if (!place) return false;
  canvas.fill(*place, white, 0.85);
  canvas.text(place->middle(), text, style, {});
  return true;
}

std::string short_number(double value) {
  const double size = std::abs(value);
  const int figures = size >= 100.0 || size == 0.0 ? 0 : size >= 10.0 ? 1 : size >= 0.1 ? 2 : 4;
  std::string text = fmt::format("{:.{}f}", value, figures);
  if (figures > 0) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
  }
  return text;
}

std::string kilonewtons(double newtons) {
  const bool small = std::abs(newtons) < 950.0 && newtons != 0.0;
  return fmt::format("{:.{}f} kN", newtons / 1000.0, small ? 2 : 1);
}

}  // namespace deadshore::viz
