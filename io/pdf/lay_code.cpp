#include "io/pdf/lay_blocks.h"

#include <algorithm>
#include <string_view>

namespace deadshore::io {
namespace {

constexpr double em = paper::body_size;

}  // namespace

void lay_code(FlowBuilder& flow, const CodeBlock& code, const Measure& measure) {
  const TypeFace face{7.6, paper::ink, false, true, 1.3};
  const double gutter = 1.2 * em;
  const Measure column{measure.left + gutter, measure.width - gutter - 0.6 * em};
  const auto mark = std::make_shared<MeasuredText>(flow.fonts(), RichText{"\u21b3", {}},
                                                   TypeFace{7.6, paper::faint, false, true, 1.3});
  flow.space(0.6 * em);
  flow.open_frame({FrameDress::code, measure.left, measure.width}, 0.5 * em, Join::free);
  // A last line or two would look lost on a page of their own.
  constexpr std::size_t kept_at_end = 3;
  const std::size_t start = flow.size();
  std::string_view rest = code.text;
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find('\n'), rest.size());
    std::string line(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
    if (line.ends_with('\r')) line.pop_back();
    const auto text = std::make_shared<MeasuredText>(flow.fonts(), RichText{line, {}}, face);
    text->wrap(column.width);
    const std::size_t first = flow.size();
    flow.add_lines(text, column);
    for (std::size_t strip = first + 1; strip < flow.size(); ++strip) {
      flow.add_to(strip, [mark, left = measure.left](const Ink& ink, viz::PagePoint at) {
        mark->draw_line(ink, 0, at.x + left + 0.3 * em, at.y);
      });
    }
  }
  flow.bind_last(std::min(kept_at_end, flow.size() - start));
  flow.close_frame(0.5 * em);
  flow.space(0.6 * em);
}

}  // namespace deadshore::io
