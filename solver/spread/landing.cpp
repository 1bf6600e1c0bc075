#include "solver/spread/landing.h"

#include "solver/job/cut.h"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <limits>
#include <numeric>

namespace deadshore::solver {

namespace {

// A load that comes down just beside a jamb: `x` is the jamb, `beside` a little outside the
// opening, so that edges in line with it are met from the right side.
class Descent {
 public:
  Descent(const std::vector<mesh::Opening>& openings, const Supports& supports)
      : openings_(openings), supports_(supports), parts_(supports.count(), 0.0) {}

  void follow(double x, double beside, double y, double part, std::size_t depth) {
    const int below = opening_below(openings_, beside, y);
    // Openings that touch could pass it to and fro for ever.
    if (below < 0 || depth == openings_.size()) {
      rest(beside, y, part);
      return;
    }
    const mesh::Opening& opening = openings_[below];
    const double to_right = std::clamp((x - opening.left) / opening.width, 0.0, 1.0);
    from_left_jamb(opening, part * (1.0 - to_right), depth + 1);
    from_right_jamb(opening, part * to_right, depth + 1);
  }

  void from_left_jamb(const mesh::Opening& opening, double part, std::size_t depth) {
    if (part > 0.0)
      follow(opening.left, opening.left - mesh::same_place, opening.springing(), part, depth);
  }

  void from_right_jamb(const mesh::Opening& opening, double part, std::size_t depth) {
    if (part > 0.0)
      follow(opening.right(), opening.right() + mesh::same_place, opening.springing(), part, depth);
  }

  [[nodiscard]] std::vector<Landing> landings() const {
    std::vector<Landing> found;
    for (int support = 0; support < supports_.count(); ++support)
      if (parts_[support] > 0.0) found.push_back({support, parts_[support]});
    return found;
  }

 private:
  void rest(double x, double y, double part) {
    for (const Landing& landing : supports_.under(x, y))
      parts_[landing.support] += part * landing.part;
  }

  const std::vector<mesh::Opening>& openings_;
  const Supports& supports_;
  std::vector<double> parts_;
};

}  // namespace

Supports::Supports(const Job& job)
    : cut_(job.wall.cut), needle_count_(static_cast<int>(job.needles.size())) {
  for (const Needle& needle : job.needles) bearing_.push_back(needle.bearing());

  std::vector<int> along(job.needles.size());
  std::iota(along.begin(), along.end(), 0);
  std::sort(along.begin(), along.end(),
            [&](int a, int b) { return bearing_[a].middle() < bearing_[b].middle(); });
  reach_.assign(bearing_.size(), cut_.span());
  for (std::size_t i = 1; i < along.size(); ++i) {
    const int before = along[i - 1];
    const int after = along[i];
    reach_[before].to = reach_[after].from = 0.5 * (bearing_[before].to + bearing_[after].from);
  }

  if (cut_.left > 0.0) posts_.push_back({cut_.left, left_pier()});
  for (const int needle : along) posts_.push_back({bearing_[needle].middle(), needle});
  if (cut_.right < job.wall.length) posts_.push_back({cut_.right, right_pier()});
}

int Supports::owner(double x) const {
  if (x < cut_.left) return left_pier();
  if (x > cut_.right) return right_pier();
  for (int needle = 0; needle < needle_count_; ++needle)
    if (reach_[needle].contains(x)) return needle;
  return left_pier();
}

double Supports::spread_line(double x) const {
  const int support = owner(x);
  if (support >= needle_count_)
    return cut_.span().contains(x) ? std::numeric_limits<double>::infinity() : 0.0;
  const mesh::Interval bearing = bearing_[support];
  return cut_.soffit + std::max({bearing.from - x, x - bearing.to, 0.0});
}

bool Supports::in_spread(double x, double y) const {
  // Twice the tolerance, for a jamb on the line itself is asked about a little outside it.
  return y >= spread_line(x) - 2.0 * mesh::same_place;
}

std::array<Landing, 2> Supports::beside(double x) const {
  if (posts_.empty()) return {Landing{left_pier(), 1.0}, {right_pier(), 0.0}};
  const auto after =
      std::find_if(posts_.begin(), posts_.end(), [x](const Post& post) { return post.x > x; });
  if (after == posts_.begin()) return {Landing{after->support, 1.0}, {after->support, 0.0}};
  const Post& before = *std::prev(after);
  if (after == posts_.end()) return {Landing{before.support, 1.0}, {before.support, 0.0}};
  const double to_right = (x - before.x) / (after->x - before.x);
  return {Landing{before.support, 1.0 - to_right}, {after->support, to_right}};
}

std::array<Landing, 2> Supports::under(double x, double y) const {
  if (!in_spread(x, y)) return beside(x);
  return {Landing{owner(x), 1.0}, {owner(x), 0.0}};
}

std::vector<mesh::Opening> openings_left_by_cut(const mesh::WallShape& shape) {
  std::vector<mesh::Opening> left;
  for (const mesh::Opening& opening : shape.openings)
    if (!takes_out(shape.cut, opening)) left.push_back(opening);
  return left;
}

int opening_below(const std::vector<mesh::Opening>& openings, double x, double y) {
  int highest = -1;
  for (std::size_t i = 0; i < openings.size(); ++i) {
    const mesh::Opening& opening = openings[i];
    if (!opening.span().contains(x) || opening.head(x) > y + mesh::same_place) continue;
    if (highest < 0 || opening.sill > openings[highest].sill) highest = static_cast<int>(i);
  }
  return highest;
}

std::vector<JambLandings> jamb_landings(const std::vector<mesh::Opening>& openings,
                                        const Supports& supports) {
  std::vector<JambLandings> landings;
  for (const mesh::Opening& opening : openings) {
    Descent left(openings, supports);
    left.from_left_jamb(opening, 1.0, 0);
    Descent right(openings, supports);
    right.from_right_jamb(opening, 1.0, 0);
    landings.push_back({left.landings(), right.landings()});
  }
  return landings;
}

}  // namespace deadshore::solver
