#pragma once

#include "solver/result/results.h"
#include "viz/page/canvas.h"

#include <string>
#include <vector>

/// What the plan of needles and props shows, and where. `x` along the wall, `z` through it from its
/// middle; on the page the outside is at the top and the inside at the bottom.
namespace deadshore::viz {

/// A rectangle seen from above, mm.
struct PlanBox {
  mesh::Interval x;
  mesh::Interval z;

  [[nodiscard]] mesh::Point middle() const { return {x.middle(), z.middle()}; }
};

/// A needle's prop with its sole, or an upright of a dead shore.
struct PlanProp {
  std::string kind;  ///< "outer prop B35": those of a row share it
  PlanBox base;
  double tube = 0.0;        ///< diameter of its outer tube, mm; 0 for a timber
  bool holds_down = false;  ///< wedged over the needle's tail
};

/// A row of joist props: its head plate and the sole under it.
struct PlanShore {
  std::string name;
  PlanBox head;
  PlanBox sole;
};

/// One needle. Without a frame nothing but its bearing on the wall is known.
struct PlanNeedle {
  std::string name;
  PlanBox box;
  bool known = false;
};

struct PlanParts {
  std::vector<PlanNeedle> needles;
  std::vector<PlanProp> props;
  std::vector<PlanBox> soles;
  bool soles_overlap = false;  ///< of neighbouring props, as given
  std::vector<PlanShore> shores;
  std::vector<PlanProp> uprights;
  std::vector<std::string> unknown;  ///< what stands there too, but nobody said where
  mesh::Interval z;                  ///< reach of all that is known, with the wall
};

[[nodiscard]] PlanParts plan_parts(const solver::JobResult& result);

/// How the beam comes to the wall, as far as the job says.
struct PlanWay {
  PlanBox lane;                   ///< between the wall's face and what stands nearest
  bool bounded = false;           ///< by something that stands there; else its outer side is open
  double inwards = 1.0;           ///< sign of z from the lane to the wall
  std::vector<PlanProp> stands;   ///< `kind` is the name
  std::vector<PlanProp> lifters;  ///< their bases in x; z is by their load distance from the lane
};

/// \pre job.beam and job.lifting
[[nodiscard]] PlanWay plan_way(const solver::Job& job);

/// Where the parts stand on the page.
struct PlanPage {
  Size size;
  double scale = 1.0;
  PagePoint origin;  ///< of x = 0, z = 0

  [[nodiscard]] double across(double x) const { return origin.x + scale * x; }
  [[nodiscard]] double down(double z) const { return origin.y + scale * z; }
  [[nodiscard]] PagePoint point(mesh::Point p) const { return {across(p.x), down(p.y)}; }
  [[nodiscard]] Rect at(const PlanBox& box) const {
    return {across(box.x.from), down(box.z.from), across(box.x.to), down(box.z.to)};
  }
};

}  // namespace deadshore::viz
