#pragma once

#include "mesh/plane.h"
#include "solver/job/job.h"

#include <array>
#include <vector>

/// Where loads come down by the 45-degree rule; see solver/spread/spread.h for the rules.
namespace deadshore::solver {

/// Part of a load that one support takes.
struct Landing {
  int support = 0;    ///< number as in `Supports`
  double part = 0.0;  ///< of the load, 0 to 1
};

/// Everything that can take load, by number: needles in the job's order, then the left pier and the
/// right one. Places are x and y in mm.
class Supports {
 public:
  explicit Supports(const Job& job);

  [[nodiscard]] int left_pier() const { return needle_count_; }       ///< its number
  [[nodiscard]] int right_pier() const { return needle_count_ + 1; }  ///< its number
  [[nodiscard]] int count() const { return needle_count_ + 2; }       ///< of all supports

  /// The support into whose width `x` falls: a pier beyond the cut's jambs, else the needle between
  /// whose midlines to its neighbours `x` lies (its tributary width); over a cut without needles
  /// the left pier.
  [[nodiscard]] int owner(double x) const;

  /// Height of the owner's 45-degree line at `x`: the soffit over its bearing, the base over a
  /// pier; infinite over a cut without needles.
  [[nodiscard]] double spread_line(double x) const;

  /// Whether a load at `x`, `y` with solid wall below it is inside its owner's spread.
  [[nodiscard]] bool in_spread(double x, double y) const;

  /// The needles or piers on either side of `x`, by the lever about the needles' middles and the
  /// cut's jambs; all of it to the last needle where there is no pier beyond it. Parts add up to 1.
  [[nodiscard]] std::array<Landing, 2> beside(double x) const;

  /// Who takes a load at `x`, `y` with solid wall below it: its owner, or from under the 45-degree
  /// lines those on either side.
  [[nodiscard]] std::array<Landing, 2> under(double x, double y) const;

  /// Tributary width of a needle: from midline to midline between it and its neighbours, or to the
  /// cut's jamb; x in mm.
  [[nodiscard]] mesh::Interval reach_of(int needle) const { return reach_.at(needle); }

 private:
  /// A support with the place about which the lever turns.
  struct Post {
    double x = 0.0;
    int support = 0;
  };

  mesh::Cut cut_;
  int needle_count_ = 0;
  std::vector<Post> posts_;  ///< from left to right
  std::vector<mesh::Interval> bearing_;
  std::vector<mesh::Interval> reach_;
};

/// Openings that are still there after the cut: all but those the cut takes out whole.
[[nodiscard]] std::vector<mesh::Opening> openings_left_by_cut(const mesh::WallShape& shape);

/// Number of the opening that a load at (`x`, `y`) comes upon first on its way down: the highest
/// whose head at `x` is not above `y`; -1 where there is none.
[[nodiscard]] int opening_below(const std::vector<mesh::Opening>& openings, double x, double y);

/// Where a load on the left jamb of an opening comes down, and one on its right jamb. The parts of
/// each add up to 1.
using JambLandings = std::array<std::vector<Landing>, 2>;

/// The landings of each opening's jambs, in the order of the openings: straight down from the
/// springing just outside the opening, by the lever again where another opening is below.
[[nodiscard]] std::vector<JambLandings> jamb_landings(const std::vector<mesh::Opening>& openings,
                                                      const Supports& supports);

}  // namespace deadshore::solver
