#include "io/pdf/lay_blocks.h"

#include "viz/page/canvas.h"

#include <fmt/format.h>

#include <algorithm>

namespace deadshore::io {
namespace {

TypeFace heading_face(int level, double em) {
  if (level == 1) return {1.6 * em, paper::ink, true, false, 1.2};
  if (level == 2) return {1.22 * em, paper::ink, true, false, 1.25};
  return {em, paper::ink, true, false, paper::leading};
}

double space_above(int level, bool framed, double em) {
  if (level == 1) return 0.1 * em;
  if (level == 2) return framed ? 0.4 * em : 2.2 * em;
  return 1.2 * em;
}

TypeFace paragraph_face(Tone tone, double em) {
  if (tone == Tone::small) return {0.87 * em, paper::faint};
  if (tone == Tone::faint) return {em, paper::faint};
  return {em};
}

FrameDress dress_of(Severity severity) {
  return severity == Severity::alarm ? FrameDress::alarm : FrameDress::warning;
}

viz::Colour colour_of(Severity severity) {
  return severity == Severity::alarm ? paper::alarm : paper::warning;
}

void lay(FlowBuilder& flow, const Heading& heading, const Measure& measure) {
  lay_heading(flow, heading, 0, measure);
}

void lay(FlowBuilder& flow, const Paragraph& paragraph, const Measure& measure) {
  flow.space(0.5 * measure.em);
  flow.add_lines(
      flow.measured(paragraph.text, paragraph_face(paragraph.tone, measure.em), measure.strong),
      measure);
  flow.space(0.5 * measure.em);
}

void lay(FlowBuilder& flow, const List& list, const Measure& measure) {
  if (list.items.empty()) return;
  const double em = measure.em;
  const double indent = list.numbered ? 1.8 * em : 1.3 * em;
  flow.space(0.5 * em);
  int number = 0;
  for (const Text& item : list.items) {
    ++number;
    flow.space(0.25 * em);
    const std::size_t first = flow.size();
    flow.add_lines(flow.measured(item, {em}, measure.strong), measure.indented(indent));
    const auto marker = flow.measured(list.numbered ? fmt::format("{}.", number) : "\u2022", {em});
    const double across = std::max(indent - 0.5 * em - marker->natural_width(), 0.0);
    flow.add_to(first, [marker, left = measure.left + across](const Ink& ink, viz::PagePoint at) {
      marker->draw_line(ink, 0, at.x + left, at.y);
    });
    flow.space(0.25 * em);
  }
  flow.space(0.5 * em);
}

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

/// With its caption; a wide one on a landscape page.
void lay(FlowBuilder& flow, const Figure& figure, const Measure& measure) {
  const double em = measure.em;
  const double caption_gap = 0.5 * em;
  const viz::Drawing& drawing = figure.drawn->drawing;
  const bool landscape = drawing.size.width > paper::text_width + 1.0;
  const Measure column = landscape ? Measure{0.0, paper::landscape_width} : measure;
  const auto caption = flow.measured(caption_of(figure), {0.9 * em, paper::ink});
  caption->wrap(column.width);

  flow.space(1.2 * em);
  const std::size_t first = flow.size();
  if (drawing.draw) {
    const double room = (landscape ? paper::landscape_height : paper::text_height) -
                        caption->height() - caption_gap;
    const double scale =
        std::min({1.0, (column.width + 0.01) / drawing.size.width,
                  std::max(room, 0.3 * paper::landscape_height) / drawing.size.height});
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
  flow.space(caption_gap);
  flow.keep_next(Join::bound);
  flow.add_lines(caption, column);
  flow.set_floating(first, landscape);
  flow.space(1.8 * em);
}

/// Long lines go on under a mark.
void lay(FlowBuilder& flow, const Listing& listing, const Measure& measure) {
  constexpr std::size_t kept_at_end = 3;  // so that no line or two look lost on the last page
  const double em = measure.em;
  const TypeFace face{7.6, paper::ink, false, true, 1.3};
  const Measure column{measure.left + 1.2 * em, measure.width - 1.8 * em};
  const auto mark = flow.measured("\u21b3", {7.6, paper::faint, false, true, 1.3});
  flow.space(0.6 * em);
  flow.open_frame({FrameDress::code, measure.left, measure.width}, 0.5 * em, Join::free);
  const std::size_t start = flow.size();
  std::string_view rest = listing.text;
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find('\n'), rest.size());
    std::string line(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
    if (line.ends_with('\r')) line.pop_back();
    const std::size_t first = flow.size();
    flow.add_lines(flow.measured(line, face), column);
    for (std::size_t strip = first + 1; strip < flow.size(); ++strip) {
      flow.add_to(strip, [mark, left = measure.left + 0.3 * em](const Ink& ink, viz::PagePoint at) {
        mark->draw_line(ink, 0, at.x + left, at.y);
      });
    }
  }
  flow.bind_last(std::min(kept_at_end, flow.size() - start));
  flow.close_frame(0.5 * em);
  flow.space(0.6 * em);
}

void lay(FlowBuilder& /*flow*/, const StageViewer& /*viewer*/, const Measure& /*measure*/) {}

void lay(FlowBuilder& flow, const Callout& callout, const Measure& measure) {
  const double em = measure.em;
  const double left = paper::bar_width + 0.8 * em;
  const Measure inside{measure.left + left, measure.width - left - 0.8 * em, em,
                       colour_of(callout.severity)};
  lay_in_frame(flow, {dress_of(callout.severity), measure.left, measure.width}, em, 0.6 * em,
               [&] { lay_blocks(flow, callout.blocks, inside); });
}

void lay(FlowBuilder& flow, const Beside& beside, const Measure& measure) {
  lay_blocks(flow, beside.blocks, measure);
}

}  // namespace

void lay_blocks(FlowBuilder& flow, const Blocks& blocks, const Measure& measure) {
  for (const Block& block : blocks) {
    std::visit([&](const auto& content) { lay(flow, content, measure); }, block.content);
  }
}

void lay_heading(FlowBuilder& flow, const Heading& heading, int number, const Measure& measure) {
  const double em = measure.em;
  const TypeFace face = heading_face(heading.level, em);
  flow.space(space_above(heading.level, flow.framed(), em));
  std::shared_ptr<MeasuredText> figure;
  Measure column = measure;
  if (number > 0) {
    TypeFace faint = face;
    faint.colour = paper::faint;
    figure = flow.measured(std::to_string(number), faint);
    column = measure.indented(figure->natural_width() + 0.65 * face.size);
  }
  if (heading.level > 1) {
    const std::string words = one_line(heading.text);
    flow.bookmark(heading.level - 2, number > 0 ? fmt::format("{} {}", number, words) : words);
  }
  const std::size_t first = flow.size();
  flow.add_lines(flow.measured(heading.text, face), column);
  if (figure) {
    flow.add_to(first, [figure, left = measure.left](const Ink& ink, viz::PagePoint at) {
      figure->draw_line(ink, 0, at.x + left, at.y);
    });
  }
  if (heading.level == 2 && !flow.framed()) {
    flow.add(0.35 * em, Join::bound, [measure, em](const Ink& ink, viz::PagePoint at) {
      const double left = at.x + measure.left;
      const double top = at.y + 0.15 * em;
      ink.fill({left, top, left + measure.width, top + 1.5}, paper::ink);
    });
  }
  flow.mark_chapter(first, heading.level == 2);
  flow.keep_next(Join::bound);
  flow.space(heading.level == 2 ? 0.5 * em : 0.35 * em);
}

void lay_in_frame(FlowBuilder& flow, const Frame& frame, double em, double space,
                  const std::function<void()>& lay_inside) {
  flow.space(space);
  flow.open_frame(frame, 0.55 * em, Join::together);
  flow.close_up();
  lay_inside();
  flow.close_frame(0.6 * em);
  flow.space(space);
}

}  // namespace deadshore::io
