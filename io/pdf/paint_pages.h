#pragma once

#include "io/pdf/paginate.h"
#include "viz/page/cairo_parts.h"

#include <string>

namespace deadshore::io {

/// What stands at the foot of every page and in the document's own description.
struct RunningFoot {
  std::string title;
  std::string revision;  ///< empty for none
};

/// The pages as a PDF document with bookmarks and links.
[[nodiscard]] std::string paint_pages(const Flow& flow, const std::vector<NotePage>& pages,
                                      const RunningFoot& foot, PangoContext* fonts);

}  // namespace deadshore::io
