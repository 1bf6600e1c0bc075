#include "io/pdf/flow.h"

#include <algorithm>
#include <utility>

namespace deadshore::io {

void FlowBuilder::space(double points) {
  space_ = std::max(space_, points);
}

void FlowBuilder::keep_next(Join join) {
  next_join_ = std::max(next_join_, join);
}

void FlowBuilder::bookmark(int depth, const std::string& words) {
  const std::string id = "heading " + std::to_string(flow_.bookmarks.size());
  anchor(id);
  flow_.bookmarks.push_back({depth, words, id});
}

std::shared_ptr<MeasuredText> FlowBuilder::measured(const Text& text, const TypeFace& face) const {
  return measured(text, face, face.colour);
}

std::shared_ptr<MeasuredText> FlowBuilder::measured(const Text& text, const TypeFace& face,
                                                    viz::Colour strong) const {
  return std::make_shared<MeasuredText>(fonts_, text, face, strong);
}

Strip& FlowBuilder::add(double height, Join join, Paint paint) {
  Strip& strip = flow_.strips.emplace_back();
  strip.height = height;
  strip.space = std::exchange(space_, 0.0);
  if (std::exchange(closed_up_, false)) strip.space = 0.0;
  strip.join = std::max({join, std::exchange(next_join_, Join::free)});
  for (const Hold& hold : holds_) {
    if (hold.first + 1 < size()) strip.join = std::max(strip.join, hold.join);
  }
  strip.paint = std::move(paint);
  strip.ids = std::exchange(next_ids_, {});
  strip.frames = open_frames_;
  return strip;
}

void FlowBuilder::add_lines(const std::shared_ptr<MeasuredText>& text, const Measure& measure) {
  text->wrap(measure.width);
  const int lines = text->lines();
  for (int line = 0; line < lines; ++line) {
    const bool kept = line == 1 || (line > 0 && line == lines - 1);
    add(text->line_height(line), kept ? Join::bound : Join::free,
        [text, line, left = measure.left](const Ink& ink, viz::PagePoint at) {
          text->draw_line(ink, line, at.x + left, at.y);
        });
  }
}

void FlowBuilder::add_to(std::size_t strip, const Paint& marker) {
  Paint& paint = flow_.strips.at(strip).paint;
  paint = [first = std::move(paint), marker](const Ink& ink, viz::PagePoint at) {
    marker(ink, at);
    if (first) first(ink, at);
  };
}

void FlowBuilder::hold_after_next(Join join) {
  holds_.push_back({join, size()});
}

void FlowBuilder::release() {
  holds_.pop_back();
}

void FlowBuilder::set_floating(std::size_t first, bool landscape) {
  if (first >= size()) return;
  Strip& strip = flow_.strips[first];
  if (landscape) {
    // It goes to a page of its own: what held it holds what follows, and no frame goes along.
    keep_next(std::exchange(strip.join, Join::free));
    for (std::size_t i = first; i < size(); ++i) flow_.strips[i].frames.clear();
    strip.landscape = true;
    strip.floats = size() - first;
  } else if (!framed() && strip.join == Join::free) {
    strip.floats = size() - first;
  }
}

void FlowBuilder::bind_last(std::size_t count) {
  for (std::size_t strip = size() - count + 1; strip < size(); ++strip) {
    flow_.strips[strip].join = Join::bound;
  }
}

void FlowBuilder::open_frame(const Frame& frame, double padding, Join join) {
  open_frames_.push_back(flow_.frames.size());
  flow_.frames.push_back(frame);
  flow_.frames.back().first = size();
  hold_after_next(join);
  add(padding, Join::free, nullptr);
  keep_next(Join::bound);
}

void FlowBuilder::close_frame(double padding) {
  space_ = 0.0;
  add(padding, Join::bound, nullptr);
  release();
  flow_.frames[open_frames_.back()].last = size() - 1;
  open_frames_.pop_back();
}

std::size_t FlowBuilder::add_head(std::vector<Strip> head) {
  flow_.heads.push_back(std::move(head));
  return flow_.heads.size() - 1;
}

}  // namespace deadshore::io
