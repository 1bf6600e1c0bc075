#include "solver/spread/spread.h"

#include "solver/job/cut.h"
#include "solver/spread/landing.h"
#include "solver/spread/ledger.h"
#include "solver/spread/spread_outline.h"
#include "solver/spread/strips.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

namespace deadshore::solver {

namespace {

// The wall is cut into upright strips in which nothing starts, ends or crosses a 45-degree line,
// and each strip into a few Gauss slices, which makes the integrals exact. Every slice's masonry
// and loads are then booked on supports, and what has been booked is compared with areas and
// weights.

// Books one upright slice of the wall, `station.width` wide, and the loads on it.
class SliceSharer {
 public:
  SliceSharer(const Job& job, const Supports& supports, const std::vector<mesh::Opening>& openings,
              Ledger& ledger)
      : job_(job), supports_(supports), openings_(openings), ledger_(ledger) {}

  void share(Station station) {
    for (const ColumnPiece& piece : column_at(job_, openings_, station.x))
      share_piece(piece, station);
    for (std::size_t i = 0; i < job_.line_loads.size(); ++i) {
      const LineLoad& load = job_.line_loads[i];
      if (!load.x.contains(station.x)) continue;
      const double level = load.follows_top ? job_.wall.top_at(station.x) : load.level;
      share_load(ledger_.line_load(i), station.x, level, load.characteristic() * station.width);
    }
    for (std::size_t i = 0; i < job_.point_loads.size(); ++i) {
      const PointLoad& load = job_.point_loads[i];
      if (!load.span().contains(station.x)) continue;
      const double load_per_length = load.characteristic() / load.bearing;
      share_load(ledger_.point_load(i), station.x, load.level, load_per_length * station.width);
    }
  }

 private:
  void share_piece(const ColumnPiece& piece, Station station) {
    const int thing = piece.lintel < 0 ? Ledger::masonry : ledger_.lintel(piece.lintel);
    if (piece.over >= 0) {
      ledger_.add_over(thing, openings_[piece.over], piece.over, station.x,
                       piece.y.length() * station.width);
      return;
    }
    const double line = std::clamp(supports_.spread_line(station.x), piece.y.from, piece.y.to);
    ledger_.add(thing, supports_.owner(station.x), (piece.y.to - line) * station.width);
    ledger_.add_wedge(thing, station.x, (line - piece.y.from) * station.width);
  }

  void share_load(int thing, double x, double level, double load) {
    const int over = opening_below(openings_, x, level);
    if (over >= 0)
      ledger_.add_over(thing, openings_[over], over, x, load);
    else if (supports_.in_spread(x, level))
      ledger_.add(thing, supports_.owner(x), load);
    else
      ledger_.add_wedge(thing, x, load);
  }

  const Job& job_;
  const Supports& supports_;
  const std::vector<mesh::Opening>& openings_;
  Ledger& ledger_;
};

bool meets_arch(mesh::Interval strip, const std::vector<mesh::Opening>& openings) {
  return std::any_of(openings.begin(), openings.end(), [&](const mesh::Opening& opening) {
    return opening.rise > 0.0 && opening.span().contains(strip.middle());
  });
}

double area_of(const mesh::Opening& opening) {
  const double box = opening.width * (opening.height - opening.rise);
  if (opening.rise <= 0.0) return box;
  const double half = 0.5 * opening.width;
  const double radius = 0.5 * (half * half / opening.rise + opening.rise);
  const double angle = 2.0 * std::atan2(half, radius - opening.rise);
  return box + 0.5 * radius * radius * (angle - std::sin(angle));
}

// Face of the wall that stands, lintels included, mm2.
double standing_area(const mesh::WallShape& wall, const std::vector<mesh::Opening>& openings) {
  double area = -wall.cut.span().length() * wall.cut.soffit;
  for (std::size_t i = 1; i < wall.top.size(); ++i)
    area += 0.5 * (wall.top[i].y + wall.top[i - 1].y) * (wall.top[i].x - wall.top[i - 1].x);
  for (const mesh::Opening& opening : openings) area -= area_of(opening);
  return area;
}

// Part of a lintel that stands: none of it where the cut takes its opening out.
double standing_area(const Lintel& lintel, const Job& job) {
  const mesh::Opening* opening = mesh::spanned_opening(lintel.shape, job.wall);
  if (opening == nullptr || takes_out(job.wall.cut, *opening)) return 0.0;
  const mesh::LintelExtent extent = mesh::extent_of(lintel.shape, job.wall);
  return extent.x.length() * extent.y.length();
}

// Weight and loads by areas alone, without any sharing: the check on what has been booked.
double total_load(const Job& job, const std::vector<mesh::Opening>& openings) {
  double masonry = standing_area(job.wall, openings);
  double total = 0.0;
  for (const Lintel& lintel : job.lintels) {
    const double area = standing_area(lintel, job);
    masonry -= area;
    total += area * lintel.thickness * lintel.unit_weight;
  }
  total += masonry * job.thickness * job.masonry.unit_weight;
  for (const LineLoad& load : job.line_loads) total += load.characteristic() * load.x.length();
  for (const PointLoad& load : job.point_loads) total += load.characteristic();
  return total;
}

}  // namespace

double SpreadResult::needle_total() const {
  double total = 0.0;
  for (const SpreadSum& needle : needles) total += needle.total;
  return total;
}

double SpreadSum::without_wedges() const {
  double sum = 0.0;
  for (const SpreadItem& item : items)
    if (!item.wedge) sum += item.load;
  return sum;
}

double SpreadResult::on_nothing() const {
  const double left = load_total - needle_total() - left_pier.total - right_pier.total;
  return std::abs(left) > 1e-6 * load_total ? left : 0.0;
}

std::vector<std::string> spread_assumptions() {
  return {
      ("A needle spreads upwards at 45 degrees from both ends of its bearing and carries the wall "
       "and the loads inside its spread."),
      ("Where the spreads of two needles meet, they are halved at the upright line midway between "
       "their bearings."),
      ("A spread stops at the upright over the cut's jamb: what stands over a pier stands on the "
       "pier."),
      "A spread stops at the wall's ends and top.",
      ("What stands over an opening, and every load on it, goes to the opening's two jambs by the "
       "lever rule and down from there; the same again where another opening is below."),
      ("A load on a jamb comes down upright from the opening's head, of an arch from its "
       "springing, and does not spread on its way."),
      ("A lintel weighs on what is under it like the masonry around it; it bridges nothing but its "
       "own opening."),
      "A point load counts as spread evenly over its bearing.",
      ("What lies under the 45-degree lines, and every load on it, goes to the needles on either "
       "side, or to the pier at the jamb, by the lever rule about the needles' middles and the "
       "jamb: nothing is left over."),
      fmt::format(
          "Where any one needle standing {:.0f} mm beside its place would bring a needle over "
          "a tenth more, that needle is designed for it.",
          setting_out),
      "Stiffness of wall, needles and ground, slack and preload play no part.",
      "Loads are dead plus imposed, with no load factor.",
  };
}

namespace {

SpreadResult share_out(const Job& job) {
  const Supports supports(job);
  const std::vector<mesh::Opening> openings = openings_left_by_cut(job.wall);
  Ledger ledger(job, supports, jamb_landings(openings, supports));
  SliceSharer sharer(job, supports, openings, ledger);

  const std::vector<double> edges = strip_edges(job, supports);
  for (std::size_t i = 1; i < edges.size(); ++i) {
    const mesh::Interval strip{edges[i - 1], edges[i]};
    for (const Station& station : stations_over(strip, meets_arch(strip, openings)))
      sharer.share(station);
  }

  SpreadResult result;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    const int number = static_cast<int>(i);
    SpreadSum sum = ledger.sum_of(number, support_of(NeedleId{i}));
    sum.outline = spread_outline(job, job.needles[i], supports.reach_of(number));
    result.needles.push_back(std::move(sum));
  }
  result.left_pier = ledger.sum_of(supports.left_pier(), supports::left_pier);
  result.right_pier = ledger.sum_of(supports.right_pier(), supports::right_pier);
  result.load_total = total_load(job, openings);
  return result;
}

/// Where a needle comes to stand that is set out `by` mm to the right, with its bearing over the
/// cut.
double within_cut(const Job& job, const Needle& needle, double by) {
  const double half = 0.5 * needle.bearing_width;
  const double least = std::min(job.wall.cut.left + half, needle.x);
  const double most = std::max(job.wall.cut.right - half, needle.x);
  return std::clamp(needle.x + by, least, most);
}

/// From here on a load is another one, and no mere rounding of a stretch of wall.
constexpr double telling_jump = 1.1;

}  // namespace

SpreadResult spread_at_45_degrees(const Job& job) {
  SpreadResult result = share_out(job);
  for (SpreadSum& needle : result.needles) needle.nearby = needle.total;
  for (std::size_t moved = 0; moved < job.needles.size(); ++moved) {
    for (const double by : {-setting_out, setting_out}) {
      Job beside = job;
      beside.needles[moved].x = within_cut(job, job.needles[moved], by);
      const SpreadResult its = share_out(beside);
      for (std::size_t i = 0; i < job.needles.size(); ++i) {
        const double other = its.needles[i].total;
        if (other > telling_jump * result.needles[i].total)
          result.needles[i].nearby = std::max(result.needles[i].nearby, other);
      }
    }
  }
  return result;
}

}  // namespace deadshore::solver
