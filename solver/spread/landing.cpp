#include "solver/spread/landing.h"

#include "solver/job/cut.h"

#include <algorithm>
#include <cstddef>
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
    if (below < 0) {
      parts_[supports_.under(beside, y)] += part;
      return;
    }
    if (depth == openings_.size()) {  // openings that touch could pass it to and fro for ever
      parts_[supports_.none()] += part;
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
}

int Supports::owner(double x) const {
  if (x < cut_.left) return left_pier();
  if (x > cut_.right) return right_pier();
  for (int needle = 0; needle < needle_count_; ++needle)
    if (reach_[needle].contains(x)) return needle;
  return none();
}

double Supports::spread_line(double x) const {
  const int support = owner(x);
  if (support >= needle_count_) return support == none() ? cut_.soffit : 0.0;
  const mesh::Interval bearing = bearing_[support];
  return cut_.soffit + std::max({bearing.from - x, x - bearing.to, 0.0});
}

int Supports::under(double x, double y) const {
  // Twice the tolerance, for a jamb on the line itself is asked about a little outside it.
  return y >= spread_line(x) - 2.0 * mesh::same_place ? owner(x) : none();
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
