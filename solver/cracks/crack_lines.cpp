#include "solver/cracks/crack_lines.h"

#include "solver/cracks/crack_window.h"
#include "solver/fem/point_location.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <optional>
#include <queue>
#include <utility>

namespace deadshore::solver {

namespace {

using mesh::Interval;
using mesh::Point;

constexpr double least_strain = 1e-7;  // over a brick's length less than anybody can see
constexpr double one_way = 0.5 * std::numbers::sqrt2;  // cosine of 45 degrees
constexpr int most_steps = 4000;                       // of one line

double dot(Point a, Point b) {
  return a.x * b.x + a.y * b.y;
}
Point moved(Point p, double by, Point along) {
  return {p.x + by * along.x, p.y + by * along.y};
}
double distance(Point a, Point b) {
  return std::hypot(b.x - a.x, b.y - a.y);
}

/// Opening across a crack at a point, within the best window.
struct CrackOpening {
  double width = 0.0;   ///< mm
  Point middle;         ///< of the strain in the window
  double window = 0.0;  ///< mm
};

/// Finds the lines: takes the element with the largest width, follows the crack from there to both
/// ends, spends the elements that belong to it, and begins again with what is left.
class CrackTracer {
 public:
  CrackTracer(const mesh::QuadMesh& mesh, const PanelFields& fields, double least_width)
      : mesh_(mesh), fields_(fields), finder_(mesh), least_width_(least_width) {
    const auto count = static_cast<std::size_t>(mesh.quad_count());
    middle_.resize(count);
    normal_.resize(count);
    free_.assign(count, 0);
    for (std::size_t q = 0; q < count; ++q) {
      const auto corners = mesh::corners_of(mesh, static_cast<int>(q));
      for (const Point c : corners) middle_[q] = moved(middle_[q], 0.25, c);
      const Principal principal = principal_of(fields.quad_crack_strain[q]);
      normal_[q] = {std::cos(principal.angle), std::sin(principal.angle)};
      const bool there = !marked(fields.quad_loose, q) && !marked(fields.quad_out, q);
      free_[q] = there && principal.major > least_strain ? 1 : 0;
    }
  }

  [[nodiscard]] std::vector<CrackLine> lines(int most) {
    std::priority_queue<std::pair<double, int>> widest;
    for (int quad = 0; quad < mesh_.quad_count(); ++quad) {
      const double width = width_of(quad);
      if (width >= least_width_) widest.emplace(width, quad);
    }
    std::vector<CrackLine> found;
    while (!widest.empty() && static_cast<int>(found.size()) < most) {
      const auto [width, quad] = widest.top();
      widest.pop();
      const double now = width_of(quad);  // lines found since may have spent its neighbours
      if (now < least_width_) continue;
      if (now < width * (1.0 - 1e-9)) {
        widest.emplace(now, quad);
        continue;
      }
      found.push_back(trace(quad));
    }
    return found;
  }

 private:
  static bool marked(const std::vector<char>& marks, std::size_t quad) {
    return !marks.empty() && marks[quad] != 0;
  }
  [[nodiscard]] bool is_free(int quad) const {
    return quad >= 0 && free_[static_cast<std::size_t>(quad)] != 0;
  }
  [[nodiscard]] Point middle_of(int quad) const { return middle_[static_cast<std::size_t>(quad)]; }

  /// Unit normal of an element's crack, on the side of `like`.
  [[nodiscard]] Point normal_of(int quad, Point like) const {
    const Point n = normal_[static_cast<std::size_t>(quad)];
    return dot(n, like) < 0.0 ? Point{-n.x, -n.y} : n;
  }
  [[nodiscard]] bool cracks_across(int quad, Point normal) const {
    return is_free(quad) && dot(normal_of(quad, normal), normal) > one_way;
  }

  [[nodiscard]] double width_of(int quad) const {
    if (!is_free(quad)) return 0.0;
    return opening_at(quad, middle_of(quad), normal_of(quad, {1.0, 0.0})).width;
  }

  [[nodiscard]] double strain_along(int quad, Point n) const {
    const PlaneTensor& e = fields_.quad_crack_strain[static_cast<std::size_t>(quad)];
    return e.xx * n.x * n.x + e.yy * n.y * n.y + 2.0 * e.xy * n.x * n.y;
  }

  [[nodiscard]] double extent(int quad, Point n) const {
    double low = dot(mesh::corners_of(mesh_, quad)[0], n);
    double high = low;
    for (const Point c : mesh::corners_of(mesh_, quad)) {
      low = std::min(low, dot(c, n));
      high = std::max(high, dot(c, n));
    }
    return high - low;
  }

  /// Cracked elements in a row along n from `p`, up to `reach` away.
  void add_pieces(Point p, Point n, double reach, std::vector<Piece>& pieces) const {
    constexpr double over_a_side = 1e-6 * brick_pitch;
    double s = 0.0;
    while (s < reach) {
      const int quad = finder_.find(moved(p, s + over_a_side, n));
      if (!cracks_across(quad, n)) return;
      const std::optional<Interval> inside = stretch_inside(mesh_, quad, p, n);
      if (!inside || inside->to <= s) return;
      pieces.push_back({{s, inside->to}, std::max(0.0, strain_along(quad, n))});
      s = inside->to;
    }
  }

  [[nodiscard]] CrackOpening opening_at(int quad, Point p, Point n) const {
    const double window = std::max(brick_pitch, 2.0 * extent(quad, n));
    std::vector<Piece> pieces;
    add_pieces(p, {-n.x, -n.y}, window, pieces);
    for (Piece& piece : pieces) piece.s = {-piece.s.to, -piece.s.from};
    add_pieces(p, n, window, pieces);
    const Interval best = best_window(pieces, window);
    CrackOpening opening{opened_in(pieces, best), p, window};
    double moment = 0.0;
    for (const Piece& piece : pieces) {
      const Interval part{std::max(piece.s.from, best.from), std::min(piece.s.to, best.to)};
      if (part.length() > 0.0) moment += part.length() * piece.strain * part.middle();
    }
    if (opening.width > 0.0) opening.middle = moved(p, moment / opening.width, n);
    return opening;
  }

  /// A point of a line, with the way on.
  struct Step {
    Point at;
    Point normal;
    CrackOpening opening;
  };

  /// The line's next point at `p`, where the crack goes on there.
  [[nodiscard]] std::optional<Step> step_at(Point p, Point normal) const {
    const int quad = finder_.find(p);
    if (!cracks_across(quad, normal)) return std::nullopt;
    const Point here = normal_of(quad, normal);
    const Point mean{normal.x + here.x, normal.y + here.y};
    const double size = std::hypot(mean.x, mean.y);
    const Point n{mean.x / size, mean.y / size};
    const CrackOpening opening = opening_at(quad, p, n);
    if (opening.width < least_width_) return std::nullopt;
    return Step{p, n, opening};
  }

  /// The same at `p` or to either side of it, where a slanting crack changes columns or rows; not
  /// where the wall ends.
  [[nodiscard]] std::optional<Step> step_beside(Point p, Point normal, double aside) const {
    if (auto step = step_at(p, normal)) return step;
    if (finder_.find(p) < 0) return std::nullopt;
    if (auto step = step_at(moved(p, aside, normal), normal)) return step;
    return step_at(moved(p, -aside, normal), normal);
  }

  /// Follows the crack from `start` to one end; `turn` is 1 or -1, which side of the normal.
  void follow(const Step& start, double turn, std::vector<Step>& line) const {
    Step now = start;
    for (int count = 0; count < most_steps; ++count) {
      const Point along{-turn * now.normal.y, turn * now.normal.x};
      const int here = finder_.find(now.at);
      if (here < 0) return;
      const double length = 0.5 * extent(here, along);
      const std::optional<Step> next =
          step_beside(moved(now.at, length, along), now.normal, length);
      if (!next) {
        line.push_back(last_step(now, length, along));
        return;
      }
      now = *next;
      // Back onto the middle of the strain, but never by more than it went on.
      const Point middle = now.opening.middle;
      const double off = dot({middle.x - now.at.x, middle.y - now.at.y}, now.normal);
      const Point kept = moved(now.at, std::clamp(off, -0.5 * length, 0.5 * length), now.normal);
      if (is_free(finder_.find(kept))) now.at = kept;
      line.push_back(now);
      if (count > 8 && distance(now.at, start.at) < 0.5 * length) return;  // it closes on itself
    }
  }

  /// The end of a crack between `now`, on it, and `length` further on, off it.
  [[nodiscard]] Step last_step(const Step& now, double length, Point along) const {
    Step last = now;
    double on = 0.0;
    double off = length;
    for (int halving = 0; halving < 12; ++halving) {
      const double middle = 0.5 * (on + off);
      const std::optional<Step> step = step_at(moved(now.at, middle, along), now.normal);
      if (step) last = *step;
      (step ? on : off) = middle;
    }
    return last;
  }

  [[nodiscard]] CrackLine trace(int quad) {
    const Point n = normal_of(quad, {1.0, 0.0});
    const CrackOpening opening = opening_at(quad, middle_of(quad), n);
    const Step start{opening.middle, n, opening};
    std::vector<Step> line;
    follow(start, -1.0, line);
    std::reverse(line.begin(), line.end());
    line.push_back(start);
    follow(start, 1.0, line);

    CrackLine crack;
    crack.width = opening.width;
    crack.widest = start.at;
    crack.normal = n;
    for (const Step& step : line) {
      crack.along.push_back(step.at);
      if (step.opening.width > crack.width) {
        crack.width = step.opening.width;
        crack.widest = step.at;
        crack.normal = step.normal;
      }
    }
    spend(line, quad);
    return crack;
  }

  void spend(const std::vector<Step>& line, int from) {
    free_[static_cast<std::size_t>(from)] = 0;
    for (int quad = 0; quad < mesh_.quad_count(); ++quad) {
      if (!is_free(quad)) continue;
      const bool near = std::ranges::any_of(line, [&](const Step& step) {
        return distance(step.at, middle_of(quad)) <= 0.5 * step.opening.window &&
               cracks_across(quad, step.normal);
      });
      if (near) free_[static_cast<std::size_t>(quad)] = 0;
    }
  }

  const mesh::QuadMesh& mesh_;
  const PanelFields& fields_;
  QuadFinder finder_;
  double least_width_;
  std::vector<Point> middle_;  ///< of each element
  std::vector<Point> normal_;  ///< of each element's crack
  std::vector<char> free_;     ///< cracked, there, and part of no line yet
};

}  // namespace

std::vector<CrackLine> crack_lines(const mesh::QuadMesh& mesh, const PanelFields& fields,
                                   double least_width, int most) {
  if (fields.quad_crack_strain.empty()) return {};
  return CrackTracer(mesh, fields, least_width).lines(most);
}

}  // namespace deadshore::solver
