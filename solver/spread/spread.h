#pragma once

#include "solver/job/job.h"
#include "solver/job/supports.h"

#include <algorithm>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace deadshore::solver {

/// The masonry of the wall, as something that weighs on supports.
struct WallMasonry {
  bool operator==(const WallMasonry&) const = default;
};

/// What weighs on the supports.
using SpreadThing = std::variant<WallMasonry, LintelId, LineLoadId, PointLoadId>;

/// One line of the hand sum: what part of which thing a support carries.
struct SpreadItem {
  SpreadThing thing;          ///< which it is in the job
  std::string name;           ///< for printing: "masonry", a lintel's name or a load's name
  double area = 0.0;          ///< mm2 of wall face for masonry and lintels, else 0
  double share = 0.0;         ///< part of the whole thing, 0 to 1
  double load = 0.0;          ///< N
  bool over_opening = false;  ///< reached this support around an opening's jamb
  bool wedge = false;         ///< from under the 45-degree lines beside it, by the lever
};

/// What one support carries by the 45-degree rule.
struct SpreadSum {
  std::optional<SupportId> support;  ///< a needle or a pier
  std::vector<SpreadItem> items;     ///< line by line
  double total = 0.0;                ///< sum of the items, N

  /// Outline of the spread for drawing, mm, from the left end of the bearing anticlockwise;
  /// empty for piers.
  std::vector<mesh::Point> outline;

  /// The largest total if any one needle stands `setting_out` beside its place, N, where that is
  /// over a tenth more: a load at a point close to where two spreads meet may be either needle's.
  /// Else the total; 0 for piers.
  double nearby = 0.0;

  /// What stands on it without the wedges beside it, N.
  [[nodiscard]] double without_wedges() const;

  /// What to design for, N.
  [[nodiscard]] double largest() const { return std::max(total, nearby); }
};

/// The hand method's answer: characteristic loads (dead + imposed, load factor 1.0) in N.
struct SpreadResult {
  std::vector<SpreadSum> needles;  ///< in the job's order
  SpreadSum left_pier;
  SpreadSum right_pier;
  double load_total = 0.0;  ///< everything on and in the wall; equals the sum of the above

  /// What all needles carry together, N.
  [[nodiscard]] double needle_total() const;

  /// The part of `load_total` that no support has taken, N: nothing, but for round-off.
  [[nodiscard]] double on_nothing() const;
};

/// How far a needle may come to stand from where it is drawn, mm along the wall. Common practice,
/// no source.
inline constexpr double setting_out = 50.0;

/// The assumptions of the hand method, one plain sentence each, for the note.
[[nodiscard]] std::vector<std::string> spread_assumptions();

/// Shares the wall out among needles and piers by the 45-degree hand method.
///
/// Rules (common practice, no source):
/// - A needle spreads upwards at 45 degrees from both ends of its bearing.
/// - Spreads of neighbours that meet are halved at the upright line midway between their bearings.
/// - A spread stops at the upright over the cut's jamb: what stands over a pier stands on the pier.
/// - A spread stops at the wall's ends and top.
/// - What stands directly over an opening (and every load on it) goes to the opening's two jambs by
///   the lever rule, and down from there; this repeats where another opening is below.
/// - What lies under the 45-degree lines, and every load on it, goes to the needles on either side,
///   or to the jamb, by the lever rule. Over a cut without needles all goes to the jambs.
///
/// Exact for straight outlines; arched heads are integrated to 1e-9 of their area. It sees only the
/// job, never the finite elements, so that it stays an independent check.
///
/// A wall of 3.3 m on two needles over a cut of 2.4 m; a pier stands on each side:
/// \code
/// Job job;
/// job.wall.length = 4000.0;
/// job.wall.top = {{0.0, 3300.0}, {4000.0, 3300.0}};
/// job.wall.cut = {800.0, 3200.0, 2100.0};
/// job.thickness = 215.0;
/// job.masonry = {"brick", 19e-6, 3000.0, 0.2, 5.0, 0.1};
/// job.needles = {{"N1", 1600.0, 152.0, 50e3}, {"N2", 2400.0, 152.0, 50e3}};
/// const SpreadResult hand = spread_at_45_degrees(job);
/// for (const SpreadSum& needle : hand.needles) {
///   fmt::print("{:.2f} of {:.2f} kN\n", needle.total / 1e3, hand.load_total / 1e3);
/// }
/// \endcode
[[nodiscard]] SpreadResult spread_at_45_degrees(const Job& job);

}  // namespace deadshore::solver
