#pragma once

#include "viz/page/page.h"
#include "viz/page/palette.h"

#include <cairo.h>

#include <cstddef>
#include <map>
#include <string>

namespace deadshore::io {

/// Where everything came to stand, known once the pages are made up and before they are drawn.
struct PageIndex {
  std::map<std::string, std::size_t> page_of;  ///< by id; pages count from 1
  std::size_t pages = 0;
};

/// What drawing on a page takes.
struct Ink {
  cairo_t* context = nullptr;
  const PageIndex* index = nullptr;

  void fill(const viz::Rect& box, viz::Colour colour) const;

  /// Makes a rectangle of the page lead to a link's target: "#id" or an address. Nothing where the
  /// document has no such id.
  void link(const std::string& target, double left, double top, double width, double height) const;

  /// Marks the place that links to `id` lead to.
  void destination(const std::string& id, double left, double top) const;

  /// What Cairo is to be told of a link to `target`; empty where it leads nowhere.
  [[nodiscard]] std::string link_attributes(const std::string& target) const;
};

}  // namespace deadshore::io
