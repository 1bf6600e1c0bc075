#include "io/pdf/lay_blocks.h"

#include <algorithm>

namespace deadshore::io {
namespace {

constexpr double em = paper::body_size;

}  // namespace

void lay_contents(FlowBuilder& flow, const ContentsBlock& contents, const Measure& measure) {
  flow.space(0.3 * em);
  for (const ContentsBlock::Entry& entry : contents.entries) {
    const double indent = 2.1 * em * (entry.depth + 1);
    const double room = measure.width - indent - 3.0 * em;
    const auto text =
        std::make_shared<MeasuredText>(flow.fonts(), RichText{entry.text, {}}, TypeFace{});
    text->cut(room);
    std::shared_ptr<MeasuredText> number;
    if (!entry.number.empty()) {
      number = std::make_shared<MeasuredText>(flow.fonts(), RichText{entry.number, {}},
                                              TypeFace{em, paper::faint});
    }
    const double height = text->line_height(0);
    flow.add(height, Join::free, [=, fonts = flow.fonts()](const Ink& ink, viz::PagePoint at) {
      const double left = at.x + measure.left;
      const double right = left + measure.width;
      const double base = at.y + text->baseline(0);
      if (number) number->draw_line(ink, 0, left + indent - 2.1 * em, at.y);
      text->draw_line(ink, 0, left + indent, at.y);
      const auto page = ink.index->page_of.find(entry.target);
      if (page == ink.index->page_of.end()) return;
      const MeasuredText figure(fonts, {std::to_string(page->second), {}}, {});
      figure.draw_line(ink, 0, right - figure.natural_width(), at.y);
      const double leader = left + indent + text->line_width(0) + 0.5 * em;
      const double end = std::max(leader, right - figure.natural_width() - 0.5 * em);
      ink.fill({leader, base - 0.3, end, base + 0.2}, paper::line);
      ink.link("#" + entry.target, left, at.y, measure.width, height);
    });
  }
  flow.space(em);
}

}  // namespace deadshore::io
