#include "io/pdf/pages.h"
#include "io/pdf/paper.h"

#include <algorithm>
#include <deque>
#include <optional>

namespace deadshore::io {
namespace {

class Paginator {
 public:
  explicit Paginator(const Flow& flow) : flow_(&flow), strips_(&flow.strips) {}

  [[nodiscard]] std::vector<NotePage> pages() {
    while (next_ < strips_->size() || !waiting_.empty()) {
      page_ = {};
      filled_ = 0.0;
      if (!waiting_.empty() && at(waiting_.front()).landscape) {
        page_.landscape = true;
        place_waiting();
      } else if (waiting_.empty() && at(next_).landscape) {
        page_.landscape = true;
        place_group(next_);
        next_ += at(next_).floats;
      } else {
        fill_portrait();
      }
      pages_.push_back(std::move(page_));
    }
    return std::move(pages_);
  }

 private:
  [[nodiscard]] const Strip& at(std::size_t strip) const { return (*strips_)[strip]; }
  [[nodiscard]] bool empty() const { return page_.strips.empty(); }
  [[nodiscard]] double space_before(const Strip& strip) const {
    return empty() ? 0.0 : strip.space;
  }
  [[nodiscard]] bool fits(double height) const {
    return filled_ + height <= paper::text_height + 0.01;
  }

  void place(const Strip& strip) {
    filled_ += space_before(strip);
    page_.strips.push_back({&strip, filled_});
    filled_ += strip.height;
  }

  [[nodiscard]] double group_height(std::size_t first) const {
    double sum = space_before(at(first)) + at(first).height;
    for (std::size_t i = first + 1; i < first + at(first).floats; ++i) {
      sum += at(i).space + at(i).height;
    }
    return sum;
  }

  void place_group(std::size_t first) {
    for (std::size_t i = first; i < first + at(first).floats; ++i) place(at(i));
  }

  void place_waiting() {
    place_group(waiting_.front());
    waiting_.pop_front();
  }

  void fill_portrait() {
    while (!waiting_.empty() && !at(waiting_.front()).landscape &&
           (empty() || fits(group_height(waiting_.front())))) {
      place_waiting();
    }
    const std::size_t start = next_;
    const std::size_t above = page_.strips.size();
    std::size_t here = next_;
    const auto must_stop = [&] { return at(here).opens_chapter && !waiting_.empty() && !empty(); };
    while (here < strips_->size() && !must_stop()) {
      if (moves_on(here)) {
        waiting_.push_back(here);
        here += at(here).floats;
        continue;
      }
      if (!fits_with_head(here, above)) {
        end_page(start, here, above);
        return;
      }
      if (page_.strips.size() == above && at(here).head != no_head) place_head(at(here).head);
      place(at(here));
      placed_.push_back(here);
      ++here;
    }
    placed_.clear();
    next_ = here;
  }

  [[nodiscard]] bool moves_on(std::size_t strip) const {
    if (at(strip).floats == 0) return false;
    return at(strip).landscape || !waiting_.empty() || (!empty() && !fits(group_height(strip)));
  }

  [[nodiscard]] bool fits_with_head(std::size_t strip, std::size_t above) const {
    double height = space_before(at(strip)) + at(strip).height;
    if (page_.strips.size() == above && at(strip).head != no_head) {
      for (const Strip& head : flow_->heads[at(strip).head]) height += head.height;
    }
    return empty() || fits(height);
  }

  void place_head(std::size_t head) {
    for (const Strip& strip : flow_->heads[head]) place(strip);
  }

  /// Ends the page before the strip that joins the one above least closely; `full` did not fit.
  void end_page(std::size_t start, std::size_t full, std::size_t above) {
    std::optional<std::size_t> free;
    std::optional<std::size_t> loose;
    for (std::size_t i = start; i <= full; ++i) {
      if (i == start && above == 0) continue;
      if (at(i).join == Join::free) free = i;
      if (at(i).join <= Join::together) loose = i;
    }
    std::size_t end = free.value_or(loose.value_or(full));
    if (free && loose && *loose > *free && top_of(*free) < least_fill) end = *loose;
    while (!placed_.empty() && placed_.back() >= end) {
      placed_.pop_back();
      page_.strips.pop_back();
    }
    if (placed_.empty() && page_.strips.size() > above) page_.strips.resize(above);
    placed_.clear();
    while (!waiting_.empty() && waiting_.back() >= end && waiting_.back() >= start)
      waiting_.pop_back();
    next_ = end;
  }

  /// How far down the page a strip of it stands.
  [[nodiscard]] double top_of(std::size_t strip) const {
    for (const PlacedStrip& placed : page_.strips) {
      if (placed.strip == &at(strip)) return placed.top;
    }
    return filled_;
  }

  static constexpr double least_fill = 0.5 * paper::text_height;

  const Flow* flow_;
  const std::vector<Strip>* strips_;
  std::vector<NotePage> pages_;
  NotePage page_;
  double filled_ = 0.0;
  std::size_t next_ = 0;
  std::vector<std::size_t> placed_;  ///< strips of the column on this page, in order
  std::deque<std::size_t> waiting_;  ///< first strips of figures that moved on
};

}  // namespace

std::vector<NotePage> paginate(const Flow& flow) {
  return Paginator(flow).pages();
}

}  // namespace deadshore::io
