#pragma once

#include "mesh/plane.h"
#include "solver/job/job.h"
#include "solver/spread/landing.h"
#include "solver/spread/spread.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// The hand sum's bookkeeping: which support takes how much of what.
namespace deadshore::solver {

/// The account of the hand sum: how much of each thing that weighs on the wall goes to each
/// support. Things are known by numbers: masonry, the lintels, the line loads, the point loads.
class Ledger {
 public:
  /// \param supports must outlive it
  /// \param jambs of each opening that the cut leaves, from `jamb_landings`
  Ledger(const Job& job, const Supports& supports, std::vector<JambLandings> jambs);

  /// Number of the wall's masonry.
  static constexpr int masonry = 0;
  /// Number of a lintel, by its place in the job.
  [[nodiscard]] int lintel(std::size_t i) const { return 1 + static_cast<int>(i); }
  /// Number of a line load.
  [[nodiscard]] int line_load(std::size_t i) const {
    return first_line_load_ + static_cast<int>(i);
  }
  /// Number of a point load.
  [[nodiscard]] int point_load(std::size_t i) const {
    return first_point_load_ + static_cast<int>(i);
  }

  /// Books `amount` (mm2 for masonry and lintels, N for loads) straight onto a support.
  void add(int thing, int support, double amount);

  /// Books an amount that lies under the 45-degree lines at `x` onto the supports on either side.
  void add_wedge(int thing, double x, double amount);

  /// Books an amount that stands over an opening at `x` onto its jambs, by the lever rule.
  /// \param number of the opening, among those that the cut leaves
  void add_over(int thing, const mesh::Opening& opening, int number, double x, double amount);

  /// What has been booked on a support, without its outline.
  /// \param number of the support, as in `Supports`
  /// \param support which it is in the job
  [[nodiscard]] SpreadSum sum_of(int number, std::optional<SupportId> support) const;

 private:
  struct Thing {
    SpreadThing what;
    std::string name;
    double load_per_amount = 1.0;
    bool has_area = false;
    double whole = 0.0;  ///< booked so far on all supports
  };
  struct Entry {
    double direct = 0.0;
    double over_opening = 0.0;
    double wedge = 0.0;
  };

  [[nodiscard]] Entry& entry(int thing, int support) {
    return entries_.at(thing * support_count_ + support);
  }

  const Supports& supports_;
  int support_count_ = 0;
  int first_line_load_ = 0;
  int first_point_load_ = 0;
  std::vector<JambLandings> jambs_;
  std::vector<Thing> things_;
  std::vector<Entry> entries_;
};

}  // namespace deadshore::solver
