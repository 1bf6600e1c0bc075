#include "solver/loads/point_bearing_checks.h"

#include "solver/checks/masonry_checks.h"
#include "solver/job/cut.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace deadshore::solver {
namespace {

constexpr const char* throughout = "every stage";

/// Solid wall beside and below a bearing: to the wall's ends, the jambs of openings and of the cut,
/// and down to the head of the opening below, or the base or the soffit.
struct Around {
  double left = 0.0;
  double right = 0.0;
  double height = 0.0;
};

Around around(const Job& job, mesh::Interval x, double level) {
  const mesh::WallShape& wall = job.wall;
  const bool over_cut = x.to > wall.cut.left && x.from < wall.cut.right;
  Around found{x.from, wall.length - x.to, over_cut ? level - wall.cut.soffit : level};
  const auto bound = [&](mesh::Interval out, double bottom, double top) {
    if (bottom >= level) return;
    if (out.to > x.from && out.from < x.to) {
      if (top <= level) found.height = std::min(found.height, level - top);
      return;
    }
    if (top <= level - found.height) return;
    if (out.to <= x.from) found.left = std::min(found.left, x.from - out.to);
    if (out.from >= x.to) found.right = std::min(found.right, out.from - x.to);
  };
  for (const mesh::Opening& opening : wall.openings) {
    if (takes_out(wall.cut, opening)) continue;
    bound(opening.span(), opening.sill, opening.crown());
  }
  if (level < wall.cut.soffit) bound(wall.cut.span(), 0.0, wall.cut.soffit);
  return found;
}

Check bearing_check(const Job& job, mesh::Interval x, double level, double depth, double force,
                    const std::string& what) {
  const Around beside = around(job, x, level);
  if (!(beside.height > 0.0))
    return not_verified(what, "EN 1996-1-1 6.1.3", "there is no masonry under this bearing");
  ConcentratedLoad load;
  load.bearing_length = x.length();
  load.bearing_depth = depth;
  load.thickness = job.thickness;
  load.near_end = std::max(0.0, std::min(beside.left, beside.right));
  load.far_end = std::max(0.0, std::max(beside.left, beside.right));
  load.height = beside.height;
  load.eccentricity = 0.5 * (job.thickness - depth);
  Check check =
      check_concentrated_load(load, force, job.masonry.compressive_strength, job.check_rules.basis);
  check.check = what;
  return check;
}

Check under_point_load(const Job& job, const PointLoad& load) {
  const mesh::Interval x{std::max(0.0, load.span().from),
                         std::min(job.wall.length, load.span().to)};
  Check check =
      bearing_check(job, x, load.level, 0.5 * job.thickness,
                    job.check_rules.design_load(load.dead, load.imposed), "masonry under the load");
  check.working += "; over half the wall's thickness";
  check.member = load.name;
  check.stage = throughout;
  return check;
}

/// All that stands straight over an opening, dead and imposed, N: an upper bound on what its lintel
/// carries.
std::pair<double, double> over_opening(const Job& job, const mesh::Opening& opening) {
  const double middle = 0.5 * (opening.left + opening.right());
  double top = job.wall.top_at(middle);
  for (const mesh::Opening& other : job.wall.openings)
    if (other.span().contains(middle) && other.sill >= opening.crown())
      top = std::min(top, other.sill);
  double dead = opening.width * (top - opening.crown()) * job.thickness * job.masonry.unit_weight;
  double imposed = 0.0;
  const auto add = [&](mesh::Interval x, double level, double its_dead, double its_imposed) {
    if (level < opening.crown() || level > top + mesh::same_place) return;
    const double length = std::min(x.to, opening.right()) - std::max(x.from, opening.left);
    if (!(length > 0.0)) return;
    dead += its_dead * length;
    imposed += its_imposed * length;
  };
  for (const LineLoad& load : job.line_loads)
    add(load.x, load.follows_top ? job.wall.top_at(middle) : load.level, load.dead, load.imposed);
  for (const PointLoad& load : job.point_loads)
    add(load.span(), load.level, load.dead / load.bearing, load.imposed / load.bearing);
  return {dead, imposed};
}

void add_lintel_ends(const Job& job, const Lintel& lintel, std::vector<Check>& checks) {
  const mesh::Opening* opening = mesh::spanned_opening(lintel.shape, job.wall);
  if (opening == nullptr || takes_out(job.wall.cut, *opening)) return;
  const mesh::LintelExtent extent = mesh::extent_of(lintel.shape, job.wall);
  const auto [dead, imposed] = over_opening(job, *opening);
  const double force = 0.5 * job.check_rules.design_load(dead, imposed);
  const double depth = std::min(lintel.thickness, job.thickness);
  for (const auto& [x, side] :
       {std::pair{mesh::Interval{extent.x.from, opening->left}, "left"},
        std::pair{mesh::Interval{opening->right(), extent.x.to}, "right"}}) {
    Check check = bearing_check(job, x, extent.y.from, depth, force,
                                fmt::format("masonry under its {} end", side));
    check.working += "; half of all straight over the opening, no arching";
    check.member = lintel.shape.name;
    check.stage = throughout;
    checks.push_back(std::move(check));
  }
}

}  // namespace

std::vector<Check> check_point_bearings(const Job& job) {
  std::vector<Check> checks;
  for (const PointLoad& load : job.point_loads)
    if (load.bears_on_masonry) checks.push_back(under_point_load(job, load));
  for (const Lintel& lintel : job.lintels) add_lintel_ends(job, lintel, checks);
  return checks;
}

}  // namespace deadshore::solver
