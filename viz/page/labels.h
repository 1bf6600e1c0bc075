#pragma once

#include "viz/page/page.h"

#include <optional>
#include <span>
#include <vector>

namespace deadshore::viz {

/// Finds room for labels on a page: remembers what is taken and gives each new box a free place.
class LabelRoom {
 public:
  /// \param page within which labels stay
  explicit LabelRoom(const Rect& page) : page_(page) {}

  /// Keeps labels off this box.
  void take(const Rect& box) { taken_.push_back(box); }

  /// Whether a box lies on the page and over nothing that is taken.
  [[nodiscard]] bool is_free(const Rect& box) const;

  /// The first candidate that is free, now taken; none if all are in the way of something.
  [[nodiscard]] std::optional<Rect> place(std::span<const Rect> candidates);

 private:
  Rect page_;
  std::vector<Rect> taken_;
};

/// Boxes round `start`, nearest first: moved by whole steps of `step` within `reach` steps each
/// way.
[[nodiscard]] std::vector<Rect> boxes_around(const Rect& start, Size step, int reach);

}  // namespace deadshore::viz
