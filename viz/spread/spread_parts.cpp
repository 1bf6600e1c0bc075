#include "viz/spread/spread_parts.h"

#include "solver/spread/landing.h"
#include "solver/spread/strips.h"

#include <algorithm>
#include <cmath>

namespace deadshore::viz {
namespace {

using mesh::Interval;
using solver::ColumnPiece;

constexpr int arch_steps = 10;  ///< into which a strip is cut that meets an arch

class PartFinder {
 public:
  PartFinder(const solver::Job& job, int needle)
      : job_(job),
        needle_(needle),
        supports_(job),
        openings_(solver::openings_left_by_cut(job.wall)) {
    const auto jambs = solver::jamb_landings(openings_, supports_);
    for (const solver::JambLandings& both : jambs) {
      bool feeds = false;
      for (const auto& landings : both)
        for (const solver::Landing& landing : landings)
          feeds = feeds || (landing.support == needle && landing.part > 1e-9);
      feeds_.push_back(feeds);
    }
  }

  [[nodiscard]] SpreadParts find() const {
    SpreadParts parts;
    const std::vector<double> edges = solver::strip_edges(job_, supports_);
    for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
      const Interval strip{edges[i], edges[i + 1]};
      if (strip.length() < 1e-6) continue;
      add_loads(strip, parts);
      const int steps = meets_arch(strip) ? arch_steps : 1;
      for (int k = 0; k < steps; ++k)
        add_patches({strip.from + strip.length() * k / steps,
                     strip.from + strip.length() * (k + 1) / steps},
                    parts);
    }
    return parts;
  }

 private:
  [[nodiscard]] bool meets_arch(Interval strip) const {
    return std::any_of(openings_.begin(), openings_.end(), [&](const mesh::Opening& opening) {
      return opening.rise > 0.0 && opening.span().contains(strip.middle());
    });
  }

  [[nodiscard]] bool feeds(int opening) const {
    return feeds_.at(static_cast<std::size_t>(opening));
  }

  void add_patches(Interval strip, SpreadParts& parts) const {
    // Just inside, where neither a jamb nor a step of the top is met.
    const double inside = 1e-6 * strip.length();
    const double left = strip.from + inside;
    const double right = strip.to - inside;
    const auto at_left = solver::column_at(job_, openings_, left);
    const auto at_right = solver::column_at(job_, openings_, right);
    if (at_left.size() != at_right.size()) return;
    const bool own = supports_.owner(strip.middle()) == needle_;
    for (std::size_t i = 0; i < at_left.size(); ++i) {
      const ColumnPiece& a = at_left[i];
      const ColumnPiece& b = at_right[i];
      const bool straight = a.over < 0;
      if (straight && has_part(strip.middle())) add_wedge(strip, a, b, parts);
      if (straight ? !own : !feeds(a.over)) continue;
      const auto foot = [&](const ColumnPiece& piece, double x) {
        return straight ? std::clamp(supports_.spread_line(x), piece.y.from, piece.y.to)
                        : piece.y.from;
      };
      const Ring ring{{strip.from, foot(a, left)},
                      {strip.to, foot(b, right)},
                      {strip.to, b.y.to},
                      {strip.from, a.y.to}};
      if (area_of({ring}) > 1e-3) parts.patches.push_back({ring, a.lintel, a.over});
    }
  }

  /// Whether by the lever a part of what is under the lines at `x` comes to the needle.
  [[nodiscard]] bool has_part(double x) const {
    const auto sides = supports_.beside(x);
    return std::any_of(sides.begin(), sides.end(), [this](const solver::Landing& landing) {
      return landing.support == needle_ && landing.part > 1e-9;
    });
  }

  /// What of two columns at a strip's ends is under the 45-degree lines.
  void add_wedge(Interval strip, const ColumnPiece& a, const ColumnPiece& b,
                 SpreadParts& parts) const {
    const double inside = 1e-6 * strip.length();
    const auto line = [&](const ColumnPiece& piece, double x) {
      return std::clamp(supports_.spread_line(x), piece.y.from, piece.y.to);
    };
    const Ring ring{{strip.from, a.y.from},
                    {strip.to, b.y.from},
                    {strip.to, line(b, strip.to - inside)},
                    {strip.from, line(a, strip.from + inside)}};
    const bool over_cut = job_.wall.cut.span().contains(strip.middle());
    if (over_cut && area_of({ring}) > 1e-3) parts.patches.push_back({ring, a.lintel, -1, true});
  }

  /// Whether a load at `level` in this strip comes to the needle, and over which opening.
  void add_stretch(int load, Interval x, double level,
                   std::vector<SpreadStretch>& stretches) const {
    const double middle = x.middle();
    const int over = solver::opening_below(openings_, middle, level);
    const bool wedge = over < 0 && !supports_.in_spread(middle, level);
    const bool straight = supports_.owner(middle) == needle_;
    const bool comes = over >= 0 ? feeds(over) : wedge ? has_part(middle) : straight;
    if (!comes || !(x.length() > 0.0)) return;
    for (SpreadStretch& before : stretches)
      if (before.load == load && before.over == over && before.wedge == wedge &&
          std::abs(before.x.to - x.from) < 1e-6) {
        before.x.to = x.to;
        return;
      }
    stretches.push_back({load, x, over, wedge});
  }

  void add_loads(Interval strip, SpreadParts& parts) const {
    for (std::size_t i = 0; i < job_.line_loads.size(); ++i) {
      const solver::LineLoad& load = job_.line_loads[i];
      if (!load.x.contains(strip.middle())) continue;
      const double level = load.follows_top ? job_.wall.top_at(strip.middle()) : load.level;
      add_stretch(static_cast<int>(i), strip, level, parts.line_loads);
    }
    for (std::size_t i = 0; i < job_.point_loads.size(); ++i) {
      const solver::PointLoad& load = job_.point_loads[i];
      if (load.span().contains(strip.middle()))
        add_stretch(static_cast<int>(i), strip, load.level, parts.point_loads);
    }
  }

  const solver::Job& job_;
  int needle_;
  solver::Supports supports_;
  std::vector<mesh::Opening> openings_;
  std::vector<bool> feeds_;  ///< of each opening, whether a jamb's load comes to the needle
};

}  // namespace

SpreadParts spread_parts(const solver::Job& job, int needle) {
  return PartFinder(job, needle).find();
}

}  // namespace deadshore::viz
