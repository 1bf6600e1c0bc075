#include "solver/cracks/crack_place.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace deadshore::solver {

namespace {

using mesh::Interval;
using mesh::Opening;
using mesh::Point;

bool overlap(Interval a, Interval b) {
  return a.from < b.to && b.from < a.to;
}

/// The corner of an opening nearest to `end`, if any is near: "the upper left corner of ...".
std::optional<std::string> corner_at(const Job& job, Point end, double near) {
  std::optional<std::string> nearest;
  double least = near;
  for (const Opening& opening : job.wall.openings) {
    for (const bool upper : {true, false}) {
      for (const bool left : {true, false}) {
        const Point corner{left ? opening.left : opening.right(),
                           upper ? opening.springing() : opening.sill};
        const double distance = std::hypot(end.x - corner.x, end.y - corner.y);
        if (distance > least) continue;
        least = distance;
        nearest = fmt::format("the {} {} corner of opening \"{}\"", upper ? "upper" : "lower",
                              left ? "left" : "right", opening.name);
      }
    }
  }
  return nearest;
}

std::optional<std::string> at_an_edge(const Job& job, Interval x, Interval y, double near) {
  for (const Opening& opening : job.wall.openings) {
    if (!overlap(x, opening.span())) continue;
    if (std::abs(y.from - opening.crown()) <= near ||
        (y.from >= opening.springing() && y.from <= opening.crown())) {
      return fmt::format("over the head of opening \"{}\"", opening.name);
    }
    if (std::abs(y.to - opening.sill) <= near) {
      return fmt::format("under the sill of opening \"{}\"", opening.name);
    }
  }
  return std::nullopt;
}

/// "over needle N2", "between N1 and N2", "between the left jamb and N1" or "over the left jamb".
std::string over_supports(const Job& job, double x, double near) {
  const Interval cut = job.wall.cut.span();
  const auto at = [near](Interval place, double where) {
    return where >= place.from - 0.5 * near && where <= place.to + 0.5 * near;
  };
  for (const Needle& needle : job.needles) {
    if (at(needle.bearing(), x)) return fmt::format("over needle {}", needle.name);
  }
  if (std::abs(x - cut.from) <= near) return "over the left jamb";
  if (std::abs(x - cut.to) <= near) return "over the right jamb";
  if (x < cut.from) return "over the left pier";
  if (x > cut.to) return "over the right pier";
  std::string left = "the left jamb";
  std::string right = "the right jamb";
  Interval gap = cut;
  for (const Needle& needle : job.needles) {
    if (needle.x <= x && needle.x >= gap.from) {
      gap.from = needle.x;
      left = needle.name;
    } else if (needle.x > x && needle.x <= gap.to) {
      gap.to = needle.x;
      right = needle.name;
    }
  }
  return fmt::format("between {} and {}", left, right);
}

/// Words for a crack that no corner of an opening explains.
std::string place_of_line(const Job& job, Point lower, Point upper, Point widest, double near) {
  const double soffit = job.wall.cut.soffit;
  const bool in_cut = job.wall.cut.span().contains(lower.x);
  if (in_cut && std::abs(lower.y - soffit) <= near) {
    return "in the soffit " + over_supports(job, lower.x, near);
  }
  const Interval x{std::min(lower.x, upper.x) - 1.0, std::max(lower.x, upper.x) + 1.0};
  if (const auto edge = at_an_edge(job, x, {lower.y, upper.y}, near)) return *edge;
  if (widest.y < soffit) {
    if (in_cut) return "in the masonry of the cut";
    return widest.x < job.wall.cut.left ? "in the left pier" : "in the right pier";
  }
  if (upper.y >= job.wall.top_at(upper.x) - near) {
    return "from the top of the wall, " + over_supports(job, upper.x, near);
  }
  return fmt::format("in the wall {:.1f} m above the soffit, {}", (widest.y - soffit) / 1000.0,
                     over_supports(job, widest.x, near));
}

}  // namespace

std::string place_of_crack(const Job& job, Point from, Point to, Point widest, double near) {
  const auto off = [&](Point end) { return std::hypot(end.x - widest.x, end.y - widest.y); };
  const Point root = off(from) <= off(to) ? from : to;
  const Point tip = off(from) <= off(to) ? to : from;
  if (const auto corner = corner_at(job, root, near)) return "from " + *corner;
  const Point lower = from.y <= to.y ? from : to;
  const Point upper = from.y <= to.y ? to : from;
  const std::string place = place_of_line(job, lower, upper, widest, near);
  const auto corner = corner_at(job, tip, near);
  return corner ? place + ", running to " + *corner : place;
}

}  // namespace deadshore::solver
