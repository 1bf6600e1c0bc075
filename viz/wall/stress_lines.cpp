#include "viz/wall/stress_lines.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <deque>
#include <map>
#include <numbers>
#include <optional>
#include <utility>

namespace deadshore::viz {

namespace {

using mesh::Point;

constexpr double alike = 0.02;  ///< principal stresses whose difference is a smaller part of them
const double sharpest_turn = std::cos(std::numbers::pi / 10.0);  // in a step
constexpr double shortest = 3.0;  ///< line that is kept, as part of the distance between lines
constexpr int looks = 8;          ///< at the field along each step, so that no edge is stepped over
constexpr int halvings = 5;       ///< of the last step before an edge

Point moved(Point from, Point along, double by) {
  return {from.x + by * along.x, from.y + by * along.y};
}

double dot(Point a, Point b) {
  return a.x * b.x + a.y * b.y;
}

double distance(Point a, Point b) {
  return std::hypot(b.x - a.x, b.y - a.y);
}

/// Direction of a line and the stress along it.
struct Heading {
  Point along;
  double size = 0.0;
};

/// Follows one family of lines through a field.
class Tracer {
 public:
  Tracer(const StressAt& stress, const TraceOptions& options)
      : stress_(stress), options_(options) {}

  /// At `p`, towards the side of `before`; nothing where the line has to stop.
  [[nodiscard]] std::optional<Heading> heading(Point p, Point before) const {
    const auto tensor = stress_(p);
    if (!tensor) return std::nullopt;
    const solver::Principal principal = solver::principal_of(*tensor);
    const bool pressed = options_.family == StressFamily::pressed;
    const double size = pressed ? -principal.minor : principal.major;
    const double largest = std::max(std::abs(principal.major), std::abs(principal.minor));
    if (!(size > 0.0 && size >= options_.least)) return std::nullopt;
    if (principal.major - principal.minor < alike * largest) return std::nullopt;
    const double angle = principal.angle + (pressed ? 0.5 * std::numbers::pi : 0.0);
    Point along{std::cos(angle), std::sin(angle)};
    if (dot(along, before) < 0.0) along = {-along.x, -along.y};
    if (dot(along, before) < sharpest_turn * std::hypot(before.x, before.y)) return std::nullopt;
    return Heading{along, size};
  }

  /// One step of the classic Runge-Kutta method; nothing where it would leave the field.
  [[nodiscard]] std::optional<Point> next(Point p, Point along, double step) const {
    const auto second = heading(moved(p, along, 0.5 * step), along);
    if (!second) return std::nullopt;
    const auto third = heading(moved(p, second->along, 0.5 * step), along);
    if (!third) return std::nullopt;
    const auto fourth = heading(moved(p, third->along, step), along);
    if (!fourth) return std::nullopt;
    const Point mean{
        (along.x + 2.0 * second->along.x + 2.0 * third->along.x + fourth->along.x) / 6.0,
        (along.y + 2.0 * second->along.y + 2.0 * third->along.y + fourth->along.y) / 6.0};
    for (int i = 1; i < looks; ++i)
      if (!stress_(moved(p, mean, step * i / looks))) return std::nullopt;
    return moved(p, mean, step);
  }

 private:
  const StressAt& stress_;
  const TraceOptions& options_;
};

/// From the seed (left out) onwards.
StressLine one_way(const Tracer& tracer, Point seed, Heading from, const TraceOptions& options,
                   const std::function<bool(Point)>& clear) {
  StressLine line;
  double step = options.step;
  Point at = seed;
  double run = 0.0;
  for (int halved = 0; halved <= halvings && run < options.longest;) {
    const auto next = tracer.next(at, from.along, step);
    const auto heading = next ? tracer.heading(*next, from.along) : std::nullopt;
    if (!heading) {
      // Shorter steps until the line ends just before what stops it.
      step *= 0.5;
      ++halved;
      continue;
    }
    if (clear && !clear(*next)) break;
    run += step;
    line.push_back({*next, heading->size});
    // Closed round: back at the start, and on the way it set out.
    if (run > 3.0 * options.step && distance(*next, seed) < 0.75 * options.step) break;
    at = *next;
    from = *heading;
  }
  return line;
}

/// Points in square cells, to find those near a place.
class Crowd {
 public:
  explicit Crowd(double cell) : cell_(cell) {}

  void add(const StressLine& line) {
    for (const StressPoint& point : line) points_[cell_at(point.at)].push_back(point.at);
  }

  /// Whether a point is nearer than `near`, which must not exceed the cell.
  [[nodiscard]] bool has_within(Point p, double near) const {
    const auto [column, row] = cell_at(p);
    for (std::int64_t j = row - 1; j <= row + 1; ++j)
      for (std::int64_t i = column - 1; i <= column + 1; ++i) {
        const auto cell = points_.find({i, j});
        if (cell == points_.end()) continue;
        for (const Point& other : cell->second)
          if (distance(other, p) < near) return true;
      }
    return false;
  }

 private:
  using Cell = std::pair<std::int64_t, std::int64_t>;

  [[nodiscard]] Cell cell_at(Point p) const {
    return {static_cast<std::int64_t>(std::floor(p.x / cell_)),
            static_cast<std::int64_t>(std::floor(p.y / cell_))};
  }

  double cell_;
  std::map<Cell, std::vector<Point>> points_;
};

/// Lines there are so far, and the rules by which another may join them.
class LineField {
 public:
  LineField(const StressAt& stress, const TraceOptions& options, double apart)
      : stress_(stress), options_(options), apart_(apart), crowd_(apart) {}

  /// Starts a line where there is room for it, then others beside it and beside those.
  void grow_from(Point seed) {
    if (!add(seed)) return;
    for (; next_ < lines_.size(); ++next_)
      for (const Point& beside : places_beside(lines_[next_])) add(beside);
  }

  [[nodiscard]] std::vector<StressLine> lines() && { return std::move(lines_); }

 private:
  bool add(Point seed) {
    if (crowd_.has_within(seed, apart_ * (1.0 - 1e-9)) || hugs_an_edge(seed)) return false;
    StressLine line = trace(stress_, seed, options_,
                            [&](Point p) { return !crowd_.has_within(p, nearest_part * apart_); });
    if (line.size() < 2 || length_of(line) < shortest * apart_) return false;
    crowd_.add(line);
    lines_.push_back(std::move(line));
    return true;
  }

  /// Whether a line from here would run along an edge of the field.
  [[nodiscard]] bool hugs_an_edge(Point seed) const {
    const auto heading = Tracer(stress_, options_).heading(seed, {});
    if (!heading) return true;
    const Point over{-heading->along.y, heading->along.x};
    const double aside = 0.5 * apart_ * (1.0 - 1e-9);
    return !stress_(moved(seed, over, aside)) || !stress_(moved(seed, over, -aside));
  }

  [[nodiscard]] std::vector<Point> places_beside(const StressLine& line) const {
    std::vector<Point> places;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
      const Point a = line[i].at;
      const Point b = line[i + 1].at;
      const double step = distance(a, b);
      if (!(step > 0.0)) continue;
      const Point over{-(b.y - a.y) / step, (b.x - a.x) / step};
      for (const double side : {apart_, -apart_}) places.push_back(moved(a, over, side));
    }
    return places;
  }

  const StressAt& stress_;
  const TraceOptions& options_;
  double apart_;
  Crowd crowd_;
  std::vector<StressLine> lines_;
  std::size_t next_ = 0;  ///< the first line beside which no others were tried
};

}  // namespace

double length_of(const StressLine& line) {
  double length = 0.0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) length += distance(line[i].at, line[i + 1].at);
  return length;
}

StressLine trace(const StressAt& stress, Point seed, const TraceOptions& options,
                 const std::function<bool(Point)>& clear) {
  const Tracer tracer(stress, options);
  const auto start = tracer.heading(seed, {});
  if (!start || (clear && !clear(seed))) return {};
  StressLine line = one_way(tracer, seed, *start, options, clear);
  const bool closed = !line.empty() && length_of(line) > 3.0 * options.step &&
                      distance(line.back().at, seed) < 0.75 * options.step;
  std::reverse(line.begin(), line.end());
  line.push_back({seed, start->size});
  if (closed) return line;
  const Heading back{{-start->along.x, -start->along.y}, start->size};
  const StressLine rest = one_way(tracer, seed, back, options, clear);
  line.insert(line.end(), rest.begin(), rest.end());
  return line;
}

std::vector<StressLine> evenly_spaced_lines(const StressAt& stress, std::span<const Point> seeds,
                                            const TraceOptions& options, double apart) {
  LineField field(stress, options, apart);
  for (const Point& seed : seeds) field.grow_from(seed);
  return std::move(field).lines();
}

std::vector<Point> seed_grid(const mesh::Box& box, double pitch) {
  std::vector<Point> seeds;
  const int columns = static_cast<int>(0.5 * box.x.length() / pitch);
  const int rows = static_cast<int>(0.5 * box.y.length() / pitch);
  for (int j = 0; j <= rows; ++j)
    for (int i = 0; i <= columns; ++i)
      for (const double up : {1.0, -1.0})
        for (const double right : {1.0, -1.0}) {
          if ((i == 0 && right < 0.0) || (j == 0 && up < 0.0)) continue;
          seeds.push_back({box.x.middle() + right * i * pitch, box.y.middle() + up * j * pitch});
        }
  return seeds;
}

using solver::PlaneTensor;

StressField::StressField(const mesh::QuadMesh& mesh, std::span<const PlaneTensor> node_stress,
                         std::span<const char> chosen)
    : finder_(mesh, chosen) {
  if (node_stress.size() == mesh.nodes.size()) stress_ = node_stress;
}

std::optional<PlaneTensor> StressField::at(mesh::Point p) const {
  if (stress_.empty()) return std::nullopt;
  const auto place = finder_.shares_at(p);
  if (!place) return std::nullopt;
  PlaneTensor sum;
  for (std::size_t i = 0; i < place->nodes.size(); ++i) {
    const PlaneTensor& here = stress_[static_cast<std::size_t>(place->nodes[i])];
    sum.xx += place->shares[i] * here.xx;
    sum.yy += place->shares[i] * here.yy;
    sum.xy += place->shares[i] * here.xy;
  }
  if (!std::isfinite(sum.xx + sum.yy + sum.xy)) return std::nullopt;
  return sum;
}

}  // namespace deadshore::viz
