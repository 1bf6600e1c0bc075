#include "solver/needle/needle_analysis.h"

#include "solver/frame/frame_buckling.h"
#include "solver/frame/frame_solution.h"
#include "solver/needle/needle_assembly.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace deadshore::solver {

// A needle frame is put together (needle_assembly.h), solved in second order and read off: the
// props' members give the props' loads, the needle's members its diagrams, and linear buckling the
// factor on all loads. The stiffness comes from a solution of its own, without the needle's weight.

namespace {

constexpr int stations_per_member = 12;  // of the diagrams
constexpr double trial_load = 1000.0;    // N, where there is no load to find a stiffness from

/// Mean downward movement of the needle under the wall's load, mm.
double settlement_of(const NeedleAssembly& assembly, const FrameSolution& solution) {
  double moved = 0.0;
  double width = 0.0;
  for (const FrameLineLoad& line : assembly.frame.line_loads) {
    const MemberSolution& member = solution.members[static_cast<std::size_t>(line.member)];
    moved -= mean_displacement(member, line.from, line.to).y() * (line.to - line.from);
    width += line.to - line.from;
  }
  return moved / width;
}

FrameResult solve_second_order(const NeedleAssembly& assembly) {
  FrameOptions options;
  options.order = FrameOrder::second;
  return solve(assembly.frame, options);
}

double packing_stiffness(const NeedleFrame& needle, const NeedleSite& site) {
  if (needle.packing.thickness <= 0.0) return std::numeric_limits<double>::infinity();
  double depth = 0.0;
  for (const mesh::Interval& strip : loaded_strips(needle, site.wall_thickness)) {
    depth += strip.length();
  }
  return needle.packing.E * depth * width_of(needle.member) / needle.packing.thickness;
}

void add_diagrams(const NeedleAssembly& assembly, const FrameSolution& solution,
                  NeedleAnswer& answer) {
  for (const int index : assembly.needle_members) {
    const MemberSolution& member = solution.members[static_cast<std::size_t>(index)];
    const double start = assembly.frame
                             .nodes[static_cast<std::size_t>(
                                 assembly.frame.members[static_cast<std::size_t>(index)].from)]
                             .x;
    const Extremes moments = extremes(member, &SectionState::moment);
    const Extremes shears = extremes(member, &SectionState::shear);
    answer.largest_moment = std::max(
        {answer.largest_moment, std::abs(moments.least.moment), std::abs(moments.greatest.moment)});
    answer.largest_shear = std::max(
        {answer.largest_shear, std::abs(shears.least.shear), std::abs(shears.greatest.shear)});
    for (int i = 0; i <= stations_per_member; ++i) {
      const double at = member.beam.length * i / stations_per_member;
      const SectionState s =
          section(member, at, i == stations_per_member ? SectionSide::before : SectionSide::after);
      answer.stations.push_back({start + at, s.moment, s.shear, -s.y});
    }
  }
}

/// Places of the nearest props on either side of the load; the props' whole reach where they are
/// all on one side.
mesh::Interval supports_of_load(const NeedleAnswer& answer) {
  mesh::Interval nearest{-std::numeric_limits<double>::infinity(),
                         std::numeric_limits<double>::infinity()};
  mesh::Interval reach{nearest.to, nearest.from};
  for (const PropLoad& prop : answer.props) {
    if (prop.place < 0.0) nearest.from = std::max(nearest.from, prop.place);
    if (prop.place > 0.0) nearest.to = std::min(nearest.to, prop.place);
    reach = {std::min(reach.from, prop.place), std::max(reach.to, prop.place)};
  }
  return std::isfinite(nearest.length()) ? nearest : reach;
}

/// Largest movement away from the straight line between two places of the needle, mm.
double bending_deflection(const std::vector<NeedleStation>& stations, mesh::Interval supports) {
  const auto deflection_at = [&](double z) {
    const auto nearest = std::min_element(stations.begin(), stations.end(),
                                          [z](const NeedleStation& a, const NeedleStation& b) {
                                            return std::abs(a.z - z) < std::abs(b.z - z);
                                          });
    return nearest->deflection;
  };
  const double from = deflection_at(supports.from);
  const double to = deflection_at(supports.to);
  double most = 0.0;
  for (const NeedleStation& station : stations) {
    const double chord = from + (to - from) * (station.z - supports.from) / supports.length();
    most = std::max(most, std::abs(station.deflection - chord));
  }
  return most;
}

}  // namespace

Frame frame_of(const NeedleFrame& frame, const NeedleSite& site, const NeedleLoad& load) {
  return assemble(frame, site, load).frame;
}

double needle_stiffness(const NeedleFrame& frame, const NeedleSite& site, double wall_load) {
  const double wall = wall_load > 0.0 ? wall_load : trial_load;
  const NeedleAssembly assembly = assemble(frame, site, {wall, 0.0});
  const double moved = settlement_of(assembly, solve_second_order(assembly).value());
  return in_series(wall / moved, packing_stiffness(frame, site));
}

NeedleAnswer analyse_needle(const NeedleFrame& frame, const NeedleSite& site,
                            const NeedleLoad& load) {
  const NeedleAssembly assembly = assemble(frame, site, load);
  const FrameResult result = solve_second_order(assembly);
  const FrameSolution& solution = result.value();

  NeedleAnswer answer;
  answer.wall_load = load.wall;
  answer.passes = result.report.passes;
  answer.stiffness = needle_stiffness(frame, site, load.wall);
  answer.settlement = load.wall / answer.stiffness;
  for (std::size_t i = 0; i < frame.props.size(); ++i) {
    const NeedleProp& prop = frame.props[i];
    const MemberSolution& column =
        solution.members[static_cast<std::size_t>(assembly.prop_members[i])];
    answer.props.push_back({prop.mark, place_of(prop, site.wall_thickness),
                            extension_of(frame, prop, site.soffit),
                            std::max(0.0, -section(column, 0.0).axial)});
  }
  add_diagrams(assembly, solution, answer);
  const mesh::Interval supports = supports_of_load(answer);
  answer.span = supports.length();
  answer.bending_deflection = bending_deflection(answer.stations, supports);
  const std::vector<BucklingMode> modes = buckling(assembly.frame);
  answer.buckling_factor =
      modes.empty() ? std::numeric_limits<double>::infinity() : modes.front().load_factor;
  return answer;
}

}  // namespace deadshore::solver
