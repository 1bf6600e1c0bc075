#include "io/pdf/document_pdf.h"

#include "io/pdf/lay_blocks.h"
#include "io/pdf/pages.h"

#include <algorithm>

namespace deadshore::io {
namespace {

/// The summary is set smaller, to be on one page.
constexpr double summary_share = 0.88;

/// A line of the contents: the chapter, dots, and its page once that is known.
void lay_line(FlowBuilder& flow, const Chapter& chapter, int number, const Measure& measure) {
  const double em = measure.em;
  const double indent = 2.1 * em;
  const auto text = flow.measured(chapter.heading, {});
  text->cut(measure.width - indent - 3.0 * em);
  const auto figure = flow.measured(number > 0 ? std::to_string(number) : "", {em, paper::faint});
  const double height = text->line_height(0);
  flow.add(height, Join::free,
           [=, target = "#" + chapter.id, fonts = flow.fonts()](const Ink& ink, viz::PagePoint at) {
             const double left = at.x + measure.left;
             const double right = left + measure.width;
             if (number > 0) figure->draw_line(ink, 0, left, at.y);
             text->draw_line(ink, 0, left + indent, at.y);
             const auto page = ink.index->page_of.find(target.substr(1));
             if (page == ink.index->page_of.end()) return;
             const MeasuredText page_number(fonts, std::to_string(page->second), {});
             page_number.draw_line(ink, 0, right - page_number.natural_width(), at.y);
             const double leader = left + indent + text->line_width(0) + 0.5 * em;
             const double end = std::max(leader, right - page_number.natural_width() - 0.5 * em);
             const double base = at.y + text->baseline(0);
             ink.fill({leader, base - 0.3, end, base + 0.2}, paper::line);
             ink.link(target, left, at.y, measure.width, height);
           });
}

void lay_contents(FlowBuilder& flow, const Document& document, const Measure& measure) {
  flow.anchor("contents");
  lay_heading(flow, {"Contents"}, 0, measure);
  flow.space(0.3 * measure.em);
  lay_line(flow, document.summary, 0, measure);
  int number = 0;
  for (const Chapter& chapter : document.chapters) lay_line(flow, chapter, ++number, measure);
  flow.space(measure.em);
}

/// `number` 0 is none.
void lay_chapter(FlowBuilder& flow, const Chapter& chapter, int number, const Measure& measure) {
  flow.anchor(chapter.id);
  flow.hold_after_next(Join::together);
  lay_heading(flow, {chapter.heading, 2}, number, measure);
  lay_blocks(flow, chapter.opening, measure);
  flow.release();
  lay_blocks(flow, chapter.rest, measure);
}

void lay_document(FlowBuilder& flow, const Document& document) {
  const Measure page;
  lay_blocks(flow, document.front, page);
  lay_contents(flow, document, page);
  const double em = summary_share * page.em;
  const Measure summary{page.left + em, page.width - 2.0 * em, em};
  lay_in_frame(flow, {FrameDress::summary, page.left, page.width}, em, 1.2 * em,
               [&] { lay_chapter(flow, document.summary, 0, summary); });
  lay_blocks(flow, document.after_summary, page);
  int number = 0;
  for (const Chapter& chapter : document.chapters) lay_chapter(flow, chapter, ++number, page);
}

}  // namespace

std::string document_pdf(const Document& document) {
  const viz::Owned<PangoContext> fonts = viz::make_text_context();
  FlowBuilder builder(fonts.get());
  lay_document(builder, document);
  const Flow flow = builder.take();
  return paint_pages(flow, paginate(flow), {one_line(document.title), one_line(document.revision)},
                     fonts.get());
}

}  // namespace deadshore::io
