#pragma once

#include "io/pdf/flow.h"

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

}  // namespace deadshore::io
