#pragma once

#include "io/pdf/blocks.h"
#include "io/pdf/page_index.h"
#include "viz/page/page.h"

#include <functional>
#include <limits>
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
  bool lies = false;           ///< takes a page on its side
  bool opens_chapter = false;
};

/// A frame, an alarm or the shade of a listing, drawn behind its strips on every page it runs over.
enum class FrameDress { summary, alarm, warning, good, code };
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

}  // namespace deadshore::io
