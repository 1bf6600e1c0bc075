#pragma once

#include "mesh/plane.h"
#include "solver/fem/plane_tensor.h"
#include "solver/fem/point_location.h"

#include <functional>
#include <optional>
#include <span>
#include <vector>

/// Lines that follow the principal stresses (stress trajectories).
namespace deadshore::viz {

/// Stress at a point of the wall, N/mm2, tension positive; nothing where there is none to show.
using StressAt = std::function<std::optional<solver::PlaneTensor>(mesh::Point)>;

/// Stresses given at the nodes, between them by the elements' shape functions: of tensors, so that
/// principal directions are found at the point itself. Nothing outside the mesh, in quadrilaterals
/// whose mark in `chosen` is 0 (empty: all count) and where a value at a node is not finite.
class StressField {
 public:
  /// Mesh and stresses (one for each node, else the field is empty) must outlive it.
  StressField(const mesh::QuadMesh& mesh, std::span<const solver::PlaneTensor> node_stress,
              std::span<const char> chosen = {});

  [[nodiscard]] std::optional<solver::PlaneTensor> at(mesh::Point p) const;

 private:
  std::span<const solver::PlaneTensor> stress_;
  solver::QuadFinder finder_;
};

/// A point of a line and the size of the stress along it there, N/mm2, positive.
struct StressPoint {
  mesh::Point at;
  double size = 0.0;
};
using StressLine = std::vector<StressPoint>;

/// Along the most compressed direction, or along the most tensioned one.
enum class StressFamily { pressed, pulled };

struct TraceOptions {
  StressFamily family = StressFamily::pressed;
  double step = 10.0;      ///< along the line, mm; shorter than half an element
  double least = 0.0;      ///< N/mm2: the line stops where the stress is smaller
  double longest = 100e3;  ///< mm, each way from the seed
};

/// The line through `seed` both ways, by the classic Runge-Kutta method of order 4 on the principal
/// direction, whose sign is kept from the step before. It stops where there is no stress field
/// (edges, openings, masonry that is out or loose), just before it; where the stress falls below
/// `least` or changes its sign; where both principal stresses are alike, or the direction turns
/// over 18 degrees in a step, so that no direction is to be trusted; and where `clear` refuses the
/// next point. Empty where the seed itself is refused.
[[nodiscard]] StressLine trace(const StressAt& stress, mesh::Point seed,
                               const TraceOptions& options,
                               const std::function<bool(mesh::Point)>& clear = {});

/// Lines about `apart` mm from each other that fill the field, after B. Jobard & W. Lefer,
/// "Creating Evenly-Spaced Streamlines of Arbitrary Density", Visualization in Scientific Computing
/// 1997 (from memory): new lines start at `apart` beside those there are, and end where they come
/// nearer than half of it to another. `seeds` start lines where there is room, in their order.
/// Lines shorter than `apart` are left out.
[[nodiscard]] std::vector<StressLine> evenly_spaced_lines(const StressAt& stress,
                                                          std::span<const mesh::Point> seeds,
                                                          const TraceOptions& options,
                                                          double apart);

/// Points of an even grid over a box, from its middle row outwards left and right, for seeds.
[[nodiscard]] std::vector<mesh::Point> seed_grid(const mesh::Box& box, double pitch);

/// Nearest that points of two of those lines come, as part of `apart`.
inline constexpr double nearest_part = 0.5;

/// Length of a line, mm.
[[nodiscard]] double length_of(const StressLine& line);

}  // namespace deadshore::viz
