#include "solver/spread/spread_outline.h"

#include <algorithm>
#include <cstddef>

namespace deadshore::solver {

namespace {

using Chain = std::vector<mesh::Point>;

// The top outline from `from` rightwards to `to`.
Chain top_between(const Chain& top, double from, double to) {
  Chain chain;
  for (std::size_t i = 1; i < top.size(); ++i) {
    const mesh::Point a = top[i - 1];
    const mesh::Point b = top[i];
    if (b.x <= from || a.x >= to || b.x == a.x) continue;
    const auto at = [&](double x) {
      return mesh::Point{x, a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x)};
    };
    for (const mesh::Point p : {at(std::max(a.x, from)), at(std::min(b.x, to))})
      if (chain.empty() || chain.back().x != p.x || chain.back().y != p.y) chain.push_back(p);
  }
  return chain;
}

// The right half of a spread: up from `foot` at 45 degrees, then back along the top to `start`.
Chain right_half(const Chain& top, mesh::Point foot, double start, double reach) {
  Chain back = {};
  const auto under_line = [&](mesh::Point p) { return p.y <= foot.y + (p.x - foot.x); };
  for (const mesh::Point p : top_between(top, start, reach)) {
    if (p.x > foot.x && under_line(p)) {  // the line leaves the wall through its top
      const mesh::Point last = back.back();
      const double gap = last.y - foot.y - (last.x - foot.x);
      const double beyond = foot.y + (p.x - foot.x) - p.y;
      const double part = gap / (gap + beyond);
      back.push_back({last.x + part * (p.x - last.x), last.y + part * (p.y - last.y)});
      std::reverse(back.begin(), back.end());
      return back;
    }
    back.push_back(p);
  }
  Chain half;
  if (reach > foot.x) half.push_back({reach, foot.y + reach - foot.x});
  std::reverse(back.begin(), back.end());
  half.insert(half.end(), back.begin(), back.end());
  return half;
}

// The wall's top or a half spread seen in a mirror; turns it round too, so that it runs on from
// left to right.
Chain mirrored(Chain chain) {
  std::reverse(chain.begin(), chain.end());
  for (mesh::Point& p : chain) p.x = -p.x;
  return chain;
}

}  // namespace

std::vector<mesh::Point> spread_outline(const Job& job, const Needle& needle,
                                        mesh::Interval reach) {
  const double soffit = job.wall.cut.soffit;
  const mesh::Interval bearing = needle.bearing();
  const Chain& top = job.wall.top;

  Chain outline = {{bearing.from, soffit}, {bearing.to, soffit}};
  const Chain right = right_half(top, {bearing.to, soffit}, bearing.middle(), reach.to);
  const Chain left =
      mirrored(right_half(mirrored(top), {-bearing.from, soffit}, -bearing.middle(), -reach.from));
  outline.insert(outline.end(), right.begin(), right.end());
  outline.insert(outline.end(), left.begin() + (left.empty() ? 0 : 1), left.end());
  return outline;
}

}  // namespace deadshore::solver
