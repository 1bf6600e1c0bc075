#include "solver/cracks/settlement_profile.h"

#include "solver/cracks/crack_lines.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace deadshore::solver {

namespace {

constexpr double straight = 1e-6;  // mm off straight over two bricks' length: rounding

double between(const SettledPoint& a, const SettledPoint& b, double x) {
  return a.down + (b.down - a.down) * (x - a.x) / (b.x - a.x);
}

double settlement_at(std::span<const SettledPoint> profile, double x) {
  auto next = std::ranges::lower_bound(profile, x, {}, &SettledPoint::x);
  if (next == profile.begin()) return profile.front().down;
  if (next == profile.end()) return profile.back().down;
  return between(*(next - 1), *next, x);
}

/// The profile at even stations about a brick's length apart, at least three.
std::vector<SettledPoint> stations_of(std::span<const SettledPoint> profile) {
  const double length = profile.back().x - profile.front().x;
  const int steps = std::max(2, static_cast<int>(std::lround(length / brick_pitch)));
  std::vector<SettledPoint> stations;
  for (int i = 0; i <= steps; ++i) {
    const double x = profile.front().x + length * i / steps;
    stations.push_back({x, settlement_at(profile, x)});
  }
  return stations;
}

/// Which way each inner station bends: 1 sags, -1 hogs, 0 straight.
std::vector<int> bends_of(const std::vector<SettledPoint>& stations) {
  std::vector<int> bends;
  for (std::size_t i = 1; i + 1 < stations.size(); ++i) {
    const double off = stations[i].down - 0.5 * (stations[i - 1].down + stations[i + 1].down);
    bends.push_back(off > straight ? 1 : off < -straight ? -1 : 0);
  }
  return bends;
}

/// Inner stations `first` to `last` bend one way.
struct Run {
  std::size_t first = 0;
  std::size_t last = 0;
  int bend = 0;
};

/// Runs of like bends. A single station between others is shorter than two bricks and joins the
/// run before it.
std::vector<Run> runs_of(const std::vector<int>& bends) {
  std::vector<Run> runs;
  for (std::size_t i = 0; i < bends.size(); ++i) {
    if (!runs.empty() && runs.back().bend == bends[i]) {
      runs.back().last = i;
      continue;
    }
    const bool alone = i + 1 < bends.size() && bends[i + 1] != bends[i];
    if (!runs.empty() && runs.back().bend != 0 && alone) {
      runs.back().last = i;
    } else {
      runs.push_back({i, i, bends[i]});
    }
  }
  return runs;
}

}  // namespace

std::vector<BentStretch> bent_stretches(std::span<const SettledPoint> profile) {
  std::vector<BentStretch> stretches;
  if (profile.size() < 3) return stretches;
  const std::vector<SettledPoint> stations = stations_of(profile);
  const std::vector<Run> runs = runs_of(bends_of(stations));
  for (const Run& run : runs) {
    if (run.bend == 0) continue;
    // Inner station i is station i + 1. Between two runs the inflection lies half way.
    const bool starts = run.first == 0;
    const bool ends = run.last + 3 == stations.size();
    BentStretch stretch;
    stretch.from =
        starts ? stations.front().x : 0.5 * (stations[run.first].x + stations[run.first + 1].x);
    stretch.to =
        ends ? stations.back().x : 0.5 * (stations[run.last + 1].x + stations[run.last + 2].x);
    stretch.bending = run.bend > 0 ? Bending::sagging : Bending::hogging;
    const SettledPoint a{stretch.from, settlement_at(profile, stretch.from)};
    const SettledPoint b{stretch.to, settlement_at(profile, stretch.to)};
    for (const SettledPoint& point : profile) {
      if (point.x <= a.x || point.x >= b.x) continue;
      stretch.deflection =
          std::max(stretch.deflection, run.bend * (point.down - between(a, b, point.x)));
    }
    stretches.push_back(stretch);
  }
  return stretches;
}

}  // namespace deadshore::solver
