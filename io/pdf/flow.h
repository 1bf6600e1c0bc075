#pragma once

#include "io/pdf/measured_text.h"
#include "viz/page/page.h"

#include <functional>
#include <limits>
#include <memory>
#include <string>
#include <vector>

namespace deadshore::io {

/// Whether a page may end before a strip: gladly, only if there is no better place, or never as
/// long as the two fit on one page.
enum class Join { free, together, bound };

inline constexpr std::size_t no_head = std::numeric_limits<std::size_t>::max();

/// A part of the note as wide as the text that no page cuts: a line, a row of a table, a figure.
struct Strip {
  double height = 0.0;
  double space = 0.0;  ///< above it; left out at the top of a page
  Join join = Join::free;
  std::function<void(const Ink&, viz::PagePoint top_left)> paint;
  std::vector<std::string> ids;
  std::vector<std::size_t> frames;  ///< those it stands in, outermost first
  std::size_t head = no_head;  ///< the head of a table that is set again above it on a new page
  std::size_t floats = 0;      ///< that many strips from here may move on without what follows
  bool landscape = false;      ///< takes a page on its side
  bool opens_chapter = false;
};

/// A frame, an alarm or the shade of a listing, drawn behind its strips on every page it runs over.
enum class FrameDress { summary, alarm, warning, code };
struct Frame {
  FrameDress dress = FrameDress::summary;
  double left = 0.0;  ///< from the left of the text
  double width = 0.0;
  std::size_t first = 0;  ///< strips
  std::size_t last = 0;
};

struct Bookmark {
  int depth = 0;
  std::string text;
  std::string id;
};

/// The whole note as one long column, before it is cut into pages.
struct Flow {
  std::vector<Strip> strips;
  std::vector<std::vector<Strip>> heads;
  std::vector<Frame> frames;
  std::vector<Bookmark> bookmarks;
};

/// A column of the text: where it starts from the left of the page's text, how wide it is, and how
/// large its letters are.
struct Measure {
  double left = 0.0;
  double width = paper::text_width;
  double em = paper::body_size;     ///< points
  viz::Colour strong = paper::ink;  ///< what is marked as such

  [[nodiscard]] Measure indented(double by) const { return {left + by, width - by, em, strong}; }
};

using Paint = std::function<void(const Ink&, viz::PagePoint top_left)>;

/// Puts strips under each other. Spaces above and below blocks close up into the larger, as
/// margins do on the page.
class FlowBuilder {
 public:
  explicit FlowBuilder(PangoContext* fonts) : fonts_(fonts) {}

  [[nodiscard]] PangoContext* fonts() const { return fonts_; }
  [[nodiscard]] const Flow& flow() const { return flow_; }
  [[nodiscard]] std::size_t size() const { return flow_.strips.size(); }
  [[nodiscard]] bool framed() const { return !open_frames_.empty(); }

  /// No space before the next strip, whatever it asks for.
  void close_up() { closed_up_ = true; }
  /// A chapter starts with this strip, which is there already.
  void mark_chapter(std::size_t strip, bool opens) { flow_.strips.at(strip).opens_chapter = opens; }
  /// At least so much space before the next strip.
  void space(double points);
  /// The next strip follows this closely at least.
  void keep_next(Join join);
  /// The next strip is where links to `id` lead.
  void anchor(const std::string& id) { next_ids_.push_back(id); }
  /// The next strip is where a bookmark leads.
  void bookmark(int depth, const std::string& words);

  /// Text that can be set; `strong` is the colour of what is marked as such.
  [[nodiscard]] std::shared_ptr<MeasuredText> measured(const Text& text,
                                                       const TypeFace& face) const;
  [[nodiscard]] std::shared_ptr<MeasuredText> measured(const Text& text, const TypeFace& face,
                                                       viz::Colour strong) const;

  /// The strip that was added, to say more of it; good until the next.
  Strip& add(double height, Join join, Paint paint);

  /// The lines of a paragraph: never one alone at the foot or head of a page.
  void add_lines(const std::shared_ptr<MeasuredText>& text, const Measure& measure);

  /// Draws `marker` with a strip that is there already.
  void add_to(std::size_t strip, const Paint& marker);

  /// The strips from `first` on may move on together without what follows; `landscape`: onto a page
  /// on its side. Not out of a frame, nor away from a heading.
  void set_floating(std::size_t first, bool landscape);

  /// What follows its first strip holds together at least so, until it is released.
  void hold_after_next(Join join);
  void release();

  /// Binds the last strips to one another.
  void bind_last(std::size_t count);

  /// What follows stands in a frame until it is closed; `join` holds its strips together.
  void open_frame(const Frame& frame, double padding, Join join);
  void close_frame(double padding);

  std::size_t add_head(std::vector<Strip> head);
  [[nodiscard]] Flow take() { return std::move(flow_); }

 private:
  struct Hold {
    Join join = Join::free;
    std::size_t first = 0;  ///< the strip that it does not hold to the one above
  };

  PangoContext* fonts_;
  Flow flow_;
  double space_ = 0.0;
  bool closed_up_ = false;
  Join next_join_ = Join::free;
  std::vector<std::string> next_ids_;
  std::vector<std::size_t> open_frames_;
  std::vector<Hold> holds_;
};

}  // namespace deadshore::io
