#include "solver/beam/load_over_beam.h"

#include "mesh/plane.h"
#include "solver/job/beam_places.h"
#include "solver/spread/landing.h"
#include "solver/spread/strips.h"

#include <algorithm>
#include <cstddef>
#include <functional>
#include <numbers>
#include <optional>
#include <utility>

namespace deadshore::solver {

namespace {

constexpr int parts_of_an_arch = 16;  // straight sides that stand for its curve

/// An opening that reaches past one end of the beam, with the jamb that stands over the beam.
struct BridgedEnd {
  mesh::Opening opening;
  double inner_jamb = 0.0;
  double outer_jamb = 0.0;
};

/// Evaluates what stands over the beam at places along the wall.
class Columns {
 public:
  explicit Columns(const Job& job)
      : job_(job), openings_(openings_left_by_cut(job.wall)), ends_(places_of_beam(job).beam.x) {
    find_bridged_ends();
    Job without_needles = job;
    without_needles.needles.clear();
    edges_ = strip_edges(without_needles, Supports(without_needles));
  }

  [[nodiscard]] const std::vector<BridgedEnd>& bridged_ends() const { return bridged_; }

  /// What comes straight down onto the beam.
  [[nodiscard]] BeamLoad direct(double x) const {
    BeamLoad load = above(x, job_.wall.cut.soffit);
    for (const BridgedEnd& end : bridged_)
      if (end.opening.span().contains(x)) load += -1.0 * above(x, end.opening.head(x));
    return load;
  }

  [[nodiscard]] BeamLoad above(double x, double level) const {
    BeamLoad sum;
    for (const ColumnPiece& piece : column_at(job_, openings_, x)) {
      const double height = piece.y.to - std::max(piece.y.from, level);
      if (height > 0.0) sum.dead += height * weight_per_area(piece.lintel);
    }
    for (const LineLoad& load : job_.line_loads) {
      const double at = load.follows_top ? job_.wall.top_at(x) : load.level;
      if (load.x.contains(x) && at >= level - mesh::same_place)
        sum += BeamLoad{load.dead, load.imposed};
    }
    for (const PointLoad& load : job_.point_loads)
      if (load.span().contains(x) && load.level >= level - mesh::same_place)
        sum += 1.0 / load.bearing * BeamLoad{load.dead, load.imposed};
    return sum;
  }

  /// Stretches within `range` on which `load` varies evenly; it is also split at `places`.
  [[nodiscard]] std::vector<LoadStretch> stretches(
      mesh::Interval range, std::vector<double> places,
      const std::function<BeamLoad(double)>& load) const {
    places.insert(places.end(), edges_.begin(), edges_.end());
    places.insert(places.end(), {range.from, range.to});
    std::erase_if(places, [&](double x) { return !range.contains(x); });
    places = mesh::distinct_places(std::move(places));
    std::vector<LoadStretch> found;
    for (std::size_t i = 1; i < places.size(); ++i) {
      const mesh::Interval strip{places[i - 1], places[i]};
      const int parts = meets_arch(strip) ? parts_of_an_arch : 1;
      const double length = strip.length() / parts;
      for (int part = 0; part < parts; ++part) {
        const double from = strip.from + part * length;
        found.push_back(fitted({from, from + length}, load));
      }
    }
    return found;
  }

 private:
  void find_bridged_ends() {
    std::optional<BridgedEnd> left;
    std::optional<BridgedEnd> right;
    for (const mesh::Opening& opening : openings_) {
      if (opening.crown() <= job_.wall.cut.soffit) continue;
      const bool over_left = opening.left < ends_.from && ends_.from < opening.right();
      const bool over_right = opening.left < ends_.to && ends_.to < opening.right();
      if (over_left && !over_right && (!left || opening.right() > left->inner_jamb))
        left = BridgedEnd{opening, opening.right(), opening.left};
      if (over_right && !over_left && (!right || opening.left < right->inner_jamb))
        right = BridgedEnd{opening, opening.left, opening.right()};
    }
    if (left) bridged_.push_back(*left);
    if (right) bridged_.push_back(*right);
  }

  [[nodiscard]] double weight_per_area(int lintel) const {
    if (lintel < 0) return job_.thickness * job_.masonry.unit_weight;
    const Lintel& beam = job_.lintels[static_cast<std::size_t>(lintel)];
    return beam.thickness * beam.unit_weight;
  }

  [[nodiscard]] bool meets_arch(mesh::Interval strip) const {
    return std::any_of(openings_.begin(), openings_.end(), [&](const mesh::Opening& opening) {
      return opening.rise > 0.0 && opening.span().contains(strip.middle());
    });
  }

  // The line through the load at two Gauss points: it has the same sum up to a cubic, and loads may
  // step at the ends.
  [[nodiscard]] static LoadStretch fitted(mesh::Interval x,
                                          const std::function<BeamLoad(double)>& load) {
    const double to_point = 0.5 * x.length() / std::numbers::sqrt3;
    const BeamLoad early = load(x.middle() - to_point);
    const BeamLoad late = load(x.middle() + to_point);
    const BeamLoad mean = 0.5 * (early + late);
    const BeamLoad to_end = 0.5 * std::numbers::sqrt3 * (late + -1.0 * early);
    return {x, mean + -1.0 * to_end, mean + to_end};
  }

  const Job& job_;
  std::vector<mesh::Opening> openings_;
  mesh::Interval ends_;
  std::vector<BridgedEnd> bridged_;
  std::vector<double> edges_;
};

/// What comes down at the inner jamb of an opening, by the lever about its outer jamb.
JambLoad jamb_load(const Columns& columns, const BridgedEnd& end) {
  const auto levered = [&](double x) {
    const double lever = (x - end.outer_jamb) / (end.inner_jamb - end.outer_jamb);
    return lever * columns.above(x, end.opening.head(x));
  };
  JambLoad jamb{end.inner_jamb, {}};
  for (const LoadStretch& stretch : columns.stretches(end.opening.span(), {}, levered))
    for (const Station& station : stations_over(stretch.x, false))
      jamb.load += station.width * levered(station.x);
  return jamb;
}

}  // namespace

BeamLoad& BeamLoad::operator+=(const BeamLoad& other) {
  dead += other.dead;
  imposed += other.imposed;
  return *this;
}

BeamLoad operator+(BeamLoad a, const BeamLoad& b) {
  return a += b;
}

BeamLoad operator*(double factor, const BeamLoad& load) {
  return {factor * load.dead, factor * load.imposed};
}

BeamLoad LoadOverBeam::sum() const {
  BeamLoad sum;
  for (const LoadStretch& stretch : stretches) sum += stretch.sum();
  for (const JambLoad& jamb : jambs) sum += jamb.load;
  return sum;
}

LoadOverBeam load_over_beam(const Job& job) {
  const BeamPlaces places = places_of_beam(job);
  const Columns columns(job);
  LoadOverBeam over;
  over.stretches = columns.stretches(places.beam.x, {places.supports.from, places.supports.to},
                                     [&](double x) { return columns.direct(x); });
  for (const BridgedEnd& end : columns.bridged_ends())
    over.jambs.push_back(jamb_load(columns, end));
  return over;
}

}  // namespace deadshore::solver
