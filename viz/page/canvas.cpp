#include "viz/page/canvas.h"

#include "viz/page/cairo_parts.h"

#include <cairo-svg.h>
#include <cairo.h>
#include <pango/pangocairo.h>

#include <array>
#include <cctype>
#include <cmath>
#include <numbers>

namespace deadshore::viz {
namespace {

/// A layout whose metrics do not depend on the output: no hinting, 72 dots an inch.
Owned<PangoLayout> make_layout(const std::string& text, const TextStyle& style) {
  const Owned<PangoContext> context = make_text_context();
  Owned<PangoLayout> layout(pango_layout_new(context.get()));
  const Owned<PangoFontDescription> font(pango_font_description_new());
  pango_font_description_set_family(font.get(), "DejaVu Sans");
  pango_font_description_set_size(font.get(), static_cast<int>(style.size * PANGO_SCALE));
  if (style.bold) pango_font_description_set_weight(font.get(), PANGO_WEIGHT_BOLD);
  pango_layout_set_font_description(layout.get(), font.get());
  if (style.width > 0.0) {
    pango_layout_set_width(layout.get(), static_cast<int>(style.width * PANGO_SCALE));
    pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
    if (style.overflow != Overflow::wrap)
      pango_layout_set_ellipsize(layout.get(), style.overflow == Overflow::cut_end
                                                   ? PANGO_ELLIPSIZE_END
                                                   : PANGO_ELLIPSIZE_MIDDLE);
  }
  const std::string valid = valid_utf8(text);
  pango_layout_set_text(layout.get(), valid.data(), static_cast<int>(valid.size()));
  return layout;
}

Size size_of(PangoLayout* layout) {
  PangoRectangle box;
  pango_layout_get_extents(layout, nullptr, &box);
  return {static_cast<double>(box.width) / PANGO_SCALE,
          static_cast<double>(box.height) / PANGO_SCALE};
}

/// Round the letters of a layout, from its top left corner.
Rect ink_of(PangoLayout* layout) {
  PangoRectangle box;
  pango_layout_get_extents(layout, &box, nullptr);
  constexpr double unit = PANGO_SCALE;
  return {box.x / unit, box.y / unit, (box.x + box.width) / unit, (box.y + box.height) / unit};
}

void draw_on(cairo_surface_t* surface, const Drawing& drawing,
             std::vector<Lettering>* lettering = nullptr) {
  const Owned<cairo_t> context(cairo_create(surface));
  Canvas canvas(context.get(), lettering);
  cairo_set_source_rgb(context.get(), white.red, white.green, white.blue);
  cairo_paint(context.get());
  drawing.draw(canvas);
  require_success(cairo_status(context.get()));
}

/// Nothing that is drawn is as small as a hundredth of a point: more decimals only weigh.
std::string with_two_decimals(const std::string& svg) {
  std::string text;
  text.reserve(svg.size());
  int decimals = -1;  // of the number read; none before its point
  for (const char letter : svg) {
    const bool is_digit = std::isdigit(static_cast<unsigned char>(letter)) != 0;
    if (letter == '.') {
      decimals = 0;
    } else if (!is_digit) {
      decimals = -1;
    } else if (decimals >= 0 && ++decimals > 2) {
      continue;
    }
    text += letter;
  }
  return text;
}

}  // namespace

Size text_size(const std::string& text, const TextStyle& style) {
  return size_of(make_layout(text, style).get());
}

Loop loop_of(const Rect& box) {
  return {
      {box.left, box.top}, {box.right, box.top}, {box.right, box.bottom}, {box.left, box.bottom}};
}

void Canvas::set(const Pen& pen) {
  cairo_set_source_rgb(context_, pen.colour.red, pen.colour.green, pen.colour.blue);
  cairo_set_line_width(context_, pen.width);
  cairo_set_dash(context_, pen.dash.data(), static_cast<int>(pen.dash.size()), 0.0);
  cairo_set_line_join(context_, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap(context_, CAIRO_LINE_CAP_BUTT);
}

void Canvas::trace(std::span<const Loop> loops) {
  cairo_new_path(context_);
  for (const Loop& loop : loops) {
    cairo_new_sub_path(context_);
    for (const PagePoint& point : loop) cairo_line_to(context_, point.x, point.y);
    cairo_close_path(context_);
  }
}

void Canvas::line(PagePoint from, PagePoint to, const Pen& pen) {
  strokes(std::array{from, to}, pen);
}

void Canvas::strokes(std::span<const PagePoint> ends, const Pen& pen) {
  cairo_new_path(context_);
  for (std::size_t i = 0; i + 1 < ends.size(); i += 2) {
    cairo_move_to(context_, ends[i].x, ends[i].y);
    cairo_line_to(context_, ends[i + 1].x, ends[i + 1].y);
  }
  set(pen);
  cairo_stroke(context_);
}

void Canvas::path(std::span<const PagePoint> points, const Pen& pen) {
  cairo_new_path(context_);
  for (const PagePoint& point : points) cairo_line_to(context_, point.x, point.y);
  set(pen);
  cairo_stroke(context_);
}

void Canvas::outline(std::span<const Loop> loops, const Pen& pen) {
  trace(loops);
  set(pen);
  cairo_stroke(context_);
}

void Canvas::fill(std::span<const Loop> loops, Colour colour, double opacity) {
  trace(loops);
  cairo_set_fill_rule(context_, CAIRO_FILL_RULE_EVEN_ODD);
  cairo_set_source_rgba(context_, colour.red, colour.green, colour.blue, opacity);
  cairo_fill(context_);
}

void Canvas::clipped(std::span<const Loop> loops, const std::function<void()>& inside) {
  cairo_save(context_);
  trace(loops);
  cairo_set_fill_rule(context_, CAIRO_FILL_RULE_EVEN_ODD);
  cairo_clip(context_);
  inside();
  cairo_restore(context_);
}

void Canvas::hatch(std::span<const Loop> loops, const Hatch& hatch) {
  const double angle = hatch.angle * std::numbers::pi / 180.0;
  const PagePoint along{std::cos(angle), -std::sin(angle)};
  const PagePoint over{-along.y, along.x};
  double near = HUGE_VAL;
  double far = -HUGE_VAL;
  double start = HUGE_VAL;
  double end = -HUGE_VAL;
  for (const Loop& loop : loops)
    for (const PagePoint& point : loop) {
      const double a = point.x * along.x + point.y * along.y;
      const double o = point.x * over.x + point.y * over.y;
      start = std::min(start, a);
      end = std::max(end, a);
      near = std::min(near, o);
      far = std::max(far, o);
    }
  if (!(far > near)) return;
  std::vector<PagePoint> ends;
  for (double o = std::ceil(near / hatch.spacing) * hatch.spacing; o < far; o += hatch.spacing)
    for (const double a : {start, end})
      ends.push_back({a * along.x + o * over.x, a * along.y + o * over.y});
  clipped(loops, [&] { strokes(ends, hatch.pen); });
}

void Canvas::fill(const Rect& box, Colour colour, double opacity) {
  fill(std::array{loop_of(box)}, colour, opacity);
}

void Canvas::outline(const Rect& box, const Pen& pen) {
  outline(std::array{loop_of(box)}, pen);
}

void Canvas::arrow(PagePoint from, PagePoint tip, const Pen& pen) {
  const double dx = tip.x - from.x;
  const double dy = tip.y - from.y;
  const double length = std::hypot(dx, dy);
  if (!(length > 0.0)) return;
  const PagePoint along{dx / length, dy / length};
  const double head = std::min(length, 3.0 + 2.2 * pen.width);
  const double half = 0.38 * head;
  const PagePoint neck{tip.x - head * along.x, tip.y - head * along.y};
  if (length > head) line(from, neck, pen);
  fill(std::array{Loop{tip,
                       {neck.x - half * along.y, neck.y + half * along.x},
                       {neck.x + half * along.y, neck.y - half * along.x}}},
       pen.colour);
}

Rect Canvas::text(PagePoint at, const std::string& text, const TextStyle& style, Anchor anchor) {
  const auto layout = make_layout(text, style);
  const Rect box = box_at(at, size_of(layout.get()), anchor);
  cairo_set_source_rgb(context_, style.colour.red, style.colour.green, style.colour.blue);
  cairo_move_to(context_, box.left, box.top);
  pango_cairo_show_layout(context_, layout.get());
  if (lettering_ != nullptr) {
    const Rect ink_box = ink_of(layout.get());
    lettering_->push_back({text,
                           style.size,
                           {box.left + ink_box.left, box.top + ink_box.top,
                            box.left + ink_box.right, box.top + ink_box.bottom}});
  }
  return box;
}

Rect Canvas::upright_text(PagePoint at, const std::string& text, const TextStyle& style,
                          Anchor anchor) {
  const auto layout = make_layout(text, style);
  const Size lying = size_of(layout.get());
  const Rect box = box_at(at, {lying.height, lying.width}, anchor);
  cairo_save(context_);
  cairo_set_source_rgb(context_, style.colour.red, style.colour.green, style.colour.blue);
  cairo_move_to(context_, box.left, box.bottom);
  cairo_rotate(context_, -0.5 * std::numbers::pi);
  pango_cairo_show_layout(context_, layout.get());
  cairo_restore(context_);
  if (lettering_ != nullptr) {
    const Rect ink_box = ink_of(layout.get());
    lettering_->push_back({text,
                           style.size,
                           {box.left + ink_box.top, box.bottom - ink_box.right,
                            box.left + ink_box.bottom, box.bottom - ink_box.left}});
  }
  return box;
}

std::string to_svg(const Drawing& drawing) {
  std::string svg;
  {
    const Owned<cairo_surface_t> surface(cairo_svg_surface_create_for_stream(
        append_bytes, &svg, drawing.size.width, drawing.size.height));
    draw_on(surface.get(), drawing);
    cairo_surface_finish(surface.get());
    require_success(cairo_surface_status(surface.get()));
  }
  // Cairo numbers its surfaces over the whole process; one a document needs no number.
  const std::size_t number = svg.find("id=\"surface") + 11;
  if (number > 11) svg.erase(number, svg.find('"', number) - number);
  return with_two_decimals(svg);
}

std::string to_pdf(const Drawing& drawing) {
  std::string pdf;
  const Owned<cairo_surface_t> surface = start_pdf(pdf, drawing.size);
  draw_on(surface.get(), drawing);
  cairo_surface_finish(surface.get());
  require_success(cairo_surface_status(surface.get()));
  return pdf;
}

std::vector<Lettering> lettering_of(const Drawing& drawing) {
  std::vector<Lettering> lettering;
  const Owned<cairo_surface_t> surface(
      cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, nullptr));
  draw_on(surface.get(), drawing, &lettering);
  return lettering;
}

std::string to_png(const Drawing& drawing, int pixels) {
  const double scale = pixels / drawing.size.width;
  const int rows = static_cast<int>(std::lround(drawing.size.height * scale));
  const Owned<cairo_surface_t> surface(
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, pixels, rows));
  // A device scale, not cairo_scale: Pango then keeps its layout the same as in the SVG.
  cairo_surface_set_device_scale(surface.get(), scale, scale);
  draw_on(surface.get(), drawing);
  return png_bytes(surface.get());
}

}  // namespace deadshore::viz
