#pragma once

#include "io/pdf/flow.h"
#include "viz/page/cairo_parts.h"

#include <string>
namespace deadshore::io {

struct PlacedStrip {
  const Strip* strip = nullptr;
  double top = 0.0;  ///< under the top of the page's text
};

struct NotePage {
  bool landscape = false;
  std::vector<PlacedStrip> strips;
};

/// Cuts the column into pages. A page ends where a strip joins the one above least closely, as late
/// as it can; what is bound stays together as long as it fits on a page. A figure that does not fit
/// stands at the head of a later page of its chapter, and the text runs on. Heads of tables come
/// again on the pages they run on to. The pages point into `flow`.
[[nodiscard]] std::vector<NotePage> paginate(const Flow& flow);

/// What stands at the foot of every page and in the document's own description.
struct RunningFoot {
  std::string title;
  std::string revision;  ///< empty for none
};

/// The pages as a PDF document with bookmarks and links.
[[nodiscard]] std::string paint_pages(const Flow& flow, const std::vector<NotePage>& pages,
                                      const RunningFoot& foot, PangoContext* fonts);

}  // namespace deadshore::io
