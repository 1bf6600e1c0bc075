#include "io/pdf/lay_blocks.h"
#include "viz/page/canvas.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

namespace deadshore::io {
namespace {

constexpr double em = paper::body_size;
constexpr double caption_gap = 0.5 * em;

/// Draws it where the context stands. Another size goes through a recording: text must be laid out
/// at its own size, for Pango sets raised and lowered text wrong under a scale.
void draw(cairo_t* context, const viz::Drawing& drawing, double scale) {
  const cairo_rectangle_t box{0.0, 0.0, drawing.size.width, drawing.size.height};
  if (scale == 1.0) {
    cairo_rectangle(context, box.x, box.y, box.width, box.height);
    cairo_clip(context);
    viz::Canvas canvas(context);
    drawing.draw(canvas);
    return;
  }
  const viz::Owned<cairo_surface_t> record(
      cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, &box));
  {
    const viz::Owned<cairo_t> recorder(cairo_create(record.get()));
    viz::Canvas canvas(recorder.get());
    drawing.draw(canvas);
  }
  cairo_scale(context, scale, scale);
  cairo_set_source_surface(context, record.get(), 0.0, 0.0);
  cairo_paint(context);
}

const viz::Figure* find(const FigureBlock& wanted, const LayoutSources& sources) {
  const auto found = std::ranges::find(sources.figures, wanted.name, &viz::Figure::name);
  if (found != sources.figures.end()) return &*found;
  if (sources.unknown == UnknownMarkup::refuse) {
    throw std::invalid_argument(
        fmt::format("the note shows a figure \"{}\" that is not drawn", wanted.name));
  }
  return nullptr;
}

/// The caption's lines after their figure; how many.
std::size_t add_caption(FlowBuilder& flow, const std::shared_ptr<const MeasuredText>& caption,
                        const Measure& measure) {
  const std::size_t first = flow.size();
  flow.space(caption_gap);
  flow.keep_next(Join::bound);
  flow.add_lines(caption, measure);
  return flow.size() - first;
}

}  // namespace

void lay_figure(FlowBuilder& flow, const FigureBlock& figure, const Measure& measure,
                const LayoutSources& sources) {
  const viz::Figure* found = find(figure, sources);
  const viz::Drawing drawing = found == nullptr ? viz::Drawing{} : found->drawing;
  const bool lies = drawing.size.width > paper::text_width + 1.0;
  const Measure column = lies ? Measure{0.0, paper::lying_width} : measure;
  const auto caption =
      std::make_shared<MeasuredText>(flow.fonts(), figure.caption, TypeFace{0.9 * em, paper::ink});
  caption->wrap(column.width);

  flow.space(1.2 * em);
  const std::size_t first = flow.size();
  if (drawing.draw) {
    const double room =
        (lies ? paper::lying_height : paper::text_height) - caption->height() - caption_gap;
    const double scale =
        std::min({1.0, (column.width + 0.01) / drawing.size.width,
                  std::max(room, 0.3 * paper::lying_height) / drawing.size.height});
    const double left = column.left + 0.5 * (column.width - scale * drawing.size.width);
    flow.add(scale * drawing.size.height, Join::free,
             [drawing, scale, left](const Ink& ink, viz::PagePoint at) {
               cairo_save(ink.context);
               cairo_translate(ink.context, at.x + left, at.y);
               draw(ink.context, drawing, scale);
               cairo_restore(ink.context);
               cairo_new_path(ink.context);
             });
  }
  add_caption(flow, caption, column);
  flow.set_floating(first, lies);
  flow.space(1.8 * em);
}

}  // namespace deadshore::io
