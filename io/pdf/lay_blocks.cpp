#include "io/pdf/lay_blocks.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace deadshore::io {
namespace {

/// The summary is set smaller, to be on one page.
constexpr double summary_share = 0.88;

/// Text of its own and the id that leads to it.
std::string id_for_bookmark(FlowBuilder& flow) {
  std::string id = fmt::format("heading {}", flow.flow().bookmarks.size());
  flow.anchor(id);
  return id;
}

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

void lay_heading(FlowBuilder& flow, const HeadingBlock& heading, const Measure& measure) {
  const double em = measure.em;
  const bool ruled = heading.level == 2 && !flow.framed();
  flow.space(space_above(heading.level, flow.framed(), em));
  if (heading.level > 1) {
    const std::string title = heading.number.empty()
                                  ? heading.text.text
                                  : fmt::format("{} {}", heading.number, heading.text.text);
    flow.bookmark(heading.level - 2, title, id_for_bookmark(flow));
  }
  const TypeFace face = heading_face(heading.level, em);
  Measure column = measure;
  std::shared_ptr<MeasuredText> number;
  if (!heading.number.empty()) {
    TypeFace faint = face;
    faint.colour = paper::faint;
    number = std::make_shared<MeasuredText>(flow.fonts(), RichText{heading.number, {}}, faint);
    column = measure.indented(number->natural_width() + 0.65 * face.size);
  }
  const auto text = std::make_shared<MeasuredText>(flow.fonts(), heading.text, face);
  text->wrap(column.width);
  const std::size_t first = flow.size();
  flow.add_lines(text, column);
  if (first == flow.size()) return;
  if (number) {
    flow.add_to(first, [number, left = measure.left](const Ink& ink, viz::PagePoint at) {
      number->draw_line(ink, 0, at.x + left, at.y);
    });
  }
  if (ruled) {
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

TypeFace paragraph_face(ParagraphTone tone, double em) {
  if (tone == ParagraphTone::small) return {0.87 * em, paper::faint};
  if (tone == ParagraphTone::kind) return {em, paper::faint};
  return {em};
}

void lay_paragraph(FlowBuilder& flow, const ParagraphBlock& paragraph, const Measure& measure,
                   viz::Colour strong) {
  const double em = measure.em;
  flow.space(0.5 * em);
  const auto text = std::make_shared<MeasuredText>(flow.fonts(), paragraph.text,
                                                   paragraph_face(paragraph.tone, em), strong);
  text->wrap(measure.width);
  flow.add_lines(text, measure);
  flow.space(0.5 * em);
}

FrameDress dress_of(FrameKind kind) {
  switch (kind) {
    case FrameKind::alarm:
      return FrameDress::alarm;
    case FrameKind::warning:
      return FrameDress::warning;
    case FrameKind::good:
      return FrameDress::good;
    case FrameKind::none:
    case FrameKind::summary:
      return FrameDress::summary;
  }
  return FrameDress::summary;
}

viz::Colour strong_in(FrameKind kind) {
  if (kind == FrameKind::alarm) return paper::alarm;
  if (kind == FrameKind::good) return paper::good;
  return kind == FrameKind::warning ? paper::warning : paper::ink;
}

class BlockLayout {
 public:
  BlockLayout(FlowBuilder& flow, const LayoutSources& sources) : flow_(&flow), sources_(&sources) {}

  void lay(const std::vector<Block>& blocks, const Measure& measure) {
    for (const Block& block : blocks) {
      for (const std::string& id : block.ids) flow_->anchor(id);
      std::visit([&](const auto& content) { lay(content, measure); }, block.content);
    }
  }

 private:
  void lay(const HeadingBlock& heading, const Measure& measure) {
    lay_heading(*flow_, heading, measure);
  }
  void lay(const ParagraphBlock& paragraph, const Measure& measure) {
    lay_paragraph(*flow_, paragraph, measure, strong_);
  }
  void lay(const GridBlock& grid, const Measure& measure) { lay_grid(*flow_, grid, measure); }
  void lay(const FigureBlock& figure, const Measure& measure) {
    lay_figure(*flow_, figure, measure, *sources_);
  }
  void lay(const CodeBlock& code, const Measure& measure) { lay_code(*flow_, code, measure); }
  void lay(const ContentsBlock& contents, const Measure& measure) {
    lay_contents(*flow_, contents, measure);
  }

  void lay(const ListBlock& list, const Measure& measure) {
    const double em = measure.em;
    const double indent = list.numbered ? 1.8 * em : 1.3 * em;
    flow_->space(0.5 * em);
    int number = 0;
    for (const std::vector<Block>& item : list.items) {
      ++number;
      flow_->space(0.25 * em);
      const std::size_t first = flow_->size();
      lay_item(item, measure.indented(indent));
      if (first == flow_->size()) continue;
      const std::string sign = list.numbered ? fmt::format("{}.", number) : "\u2022";
      const auto marker =
          std::make_shared<MeasuredText>(flow_->fonts(), RichText{sign, {}}, TypeFace{em});
      flow_->add_to(first,
                    [marker, left = measure.left, indent, em](const Ink& ink, viz::PagePoint at) {
                      const double across = indent - 0.5 * em - marker->natural_width();
                      marker->draw_line(ink, 0, at.x + left + std::max(across, 0.0), at.y);
                    });
    }
    flow_->space(0.5 * em);
  }

  /// A line of text closes up to its neighbours more than a paragraph does.
  void lay_item(const std::vector<Block>& item, const Measure& measure) {
    const auto* line =
        item.size() == 1 ? std::get_if<ParagraphBlock>(&item.front().content) : nullptr;
    if (line == nullptr) {
      lay(item, measure);
      return;
    }
    for (const std::string& id : item.front().ids) flow_->anchor(id);
    const auto text = std::make_shared<MeasuredText>(
        flow_->fonts(), line->text, paragraph_face(line->tone, measure.em), strong_);
    text->wrap(measure.width);
    flow_->add_lines(text, measure);
    flow_->space(0.25 * measure.em);
  }

  void lay(const FramedBlock& framed, const Measure& measure) {
    if (framed.kind == FrameKind::none) {
      flow_->hold_after_next(Join::together);
      lay(framed.blocks, measure);
      flow_->release();
      return;
    }
    const bool summary = framed.kind == FrameKind::summary;
    const double em = measure.em * (summary ? summary_share : 1.0);
    const viz::Colour outer = std::exchange(strong_, strong_in(framed.kind));
    const double left = summary ? em : paper::bar_width + 0.8 * em;
    const double right = summary ? em : 0.8 * em;
    const double above = summary ? 1.2 * em : 0.6 * em;
    flow_->space(above);
    flow_->open_frame({dress_of(framed.kind), measure.left, measure.width}, 0.55 * em,
                      Join::together);
    flow_->close_up();
    lay(framed.blocks, {measure.left + left, measure.width - left - right, em});
    flow_->close_frame(0.6 * em);
    flow_->space(above);
    strong_ = outer;
  }

  FlowBuilder* flow_;
  const LayoutSources* sources_;
  viz::Colour strong_ = paper::ink;
};

}  // namespace

void lay_blocks(FlowBuilder& flow, const std::vector<Block>& blocks, const Measure& measure,
                const LayoutSources& sources) {
  BlockLayout(flow, sources).lay(blocks, measure);
}

}  // namespace deadshore::io
