#include "viz/page/labels.h"

#include <algorithm>
#include <utility>

namespace deadshore::viz {
namespace {

Rect moved(const Rect& box, double right, double down) {
  return {box.left + right, box.top + down, box.right + right, box.bottom + down};
}

}  // namespace

bool LabelRoom::is_free(const Rect& box) const {
  return page_.holds(box) && std::none_of(taken_.begin(), taken_.end(),
                                          [&](const Rect& other) { return other.overlaps(box); });
}

std::optional<Rect> LabelRoom::place(std::span<const Rect> candidates) {
  for (const Rect& box : candidates)
    if (is_free(box)) {
      take(box);
      return box;
    }
  return std::nullopt;
}

std::vector<Rect> boxes_around(const Rect& start, Size step, int reach) {
  std::vector<std::pair<double, Rect>> boxes;
  for (int down = -reach; down <= reach; ++down)
    for (int right = -reach; right <= reach; ++right) {
      const double dx = right * step.width;
      const double dy = down * step.height;
      boxes.emplace_back(dx * dx + dy * dy, moved(start, dx, dy));
    }
  std::stable_sort(boxes.begin(), boxes.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<Rect> ordered;
  ordered.reserve(boxes.size());
  for (const auto& [distance, box] : boxes) ordered.push_back(box);
  return ordered;
}

}  // namespace deadshore::viz
