#include "solver/needle/needle_analysis.h"

#include "solver/frame/frame_buckling.h"
#include "solver/frame/frame_solution.h"
#include "solver/frame/imperfections.h"
#include "solver/model/error.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace deadshore::solver {

namespace {

constexpr double same_place = 1e-6;      // mm
constexpr int stations_per_member = 12;  // of the diagrams
constexpr double trial_load = 1000.0;    // N, where there is no load to find a stiffness from

/// Softwood across the grain against along it: EN 338 gives E_90 = E_0 / 30.
constexpr double across_grain = 1.0 / 30.0;

/// The members that stand for a prop: one tube or two, the last of them at the needle.
struct PropMembers {
  int foot_node = 0;
  int at_needle = 0;
};

struct Assembly {
  Frame frame;
  std::vector<int> needle_members;  ///< in order of z
  std::vector<PropMembers> props;
};

double in_series(double a, double b) {
  return 1.0 / (1.0 / a + 1.0 / b);
}

/// Stiffness of what a prop's foot presses on, N/mm: the sole across its grain, then the ground.
double footing_stiffness(const Footing& footing) {
  const SolePlate& sole = footing.sole;
  const double E = across_grain * sole.timber.strength_class.E_0_mean;
  const double of_sole = E * sole.prop_base * sole.prop_base / sole.timber.section.h;
  if (footing.subgrade_modulus <= 0.0) return of_sole;
  return in_series(of_sole, footing.subgrade_modulus * ground_contact(sole).area());
}

int add_node(Frame& frame, double x, double y, std::string name) {
  frame.nodes.push_back({x, y, std::move(name)});
  return static_cast<int>(frame.nodes.size()) - 1;
}

int add_tube(Frame& frame, int from, int to, const Tube& tube, const std::string& name) {
  FrameMember member;
  member.from = from;
  member.to = to;
  member.E = steel_E;
  member.A = tube.area();
  member.I = tube.inertia();
  member.name = name;
  frame.members.push_back(member);
  return static_cast<int>(frame.members.size()) - 1;
}

/// The needle from end to end, with a node at each prop and at the wall's middle.
void add_needle(const NeedleFrame& needle, const NeedleSite& site, double weight_factor,
                double axis, Assembly& assembly) {
  std::vector<double> places = {0.0};
  for (const NeedleProp& prop : needle.props) places.push_back(place_of(prop, site.wall_thickness));
  std::vector<double> ends = places;
  ends.push_back(-0.5 * site.wall_thickness);
  ends.push_back(0.5 * site.wall_thickness);
  const auto [least, most] = std::minmax_element(ends.begin(), ends.end());
  places.push_back(*least - needle.overhang);
  places.push_back(*most + needle.overhang);
  std::sort(places.begin(), places.end());
  const auto same = [](double a, double b) { return std::abs(a - b) < same_place; };
  places.erase(std::unique(places.begin(), places.end(), same), places.end());

  Frame& frame = assembly.frame;
  for (const double place : places) {
    const int node = add_node(frame, place, axis, "needle");
    if (same(place, 0.0)) {
      FrameSupport held;
      held.node = node;
      held.x = 0.0;
      frame.supports.push_back(held);
    }
    if (node == 0) continue;
    FrameMember member;
    member.from = node - 1;
    member.to = node;
    member.E = elastic_modulus_of(needle.member);
    member.I = inertia_of(needle.member);
    member.weight = weight_factor * weight_of(needle.member);
    member.name = "needle";
    if (const auto* steel = std::get_if<SteelMember>(&needle.member)) {
      member.A = steel->properties.A;
      member.shear_stiffness = steel_G * steel->properties.A_v;
    } else {
      const auto& timber = std::get<TimberMember>(needle.member);
      member.A = timber.section.area();
      member.shear_stiffness = timber.strength_class.G_mean * timber.section.area() / 1.2;
    }
    frame.members.push_back(member);
    assembly.needle_members.push_back(static_cast<int>(frame.members.size()) - 1);
  }
}

int needle_node_at(const Assembly& assembly, double place) {
  for (std::size_t i = 0; i < assembly.frame.nodes.size(); ++i) {
    if (std::abs(assembly.frame.nodes[i].x - place) < same_place) return static_cast<int>(i);
  }
  throw SolveError("a needle's prop is not on the needle");
}

/// A prop as a column of an outer and an inner tube, out of plumb, pinned at the needle and on a
/// spring at its foot that lets go of what it would have to pull.
void add_prop(const NeedleFrame& needle, const NeedleProp& prop, const NeedleSite& site,
              Assembly& assembly) {
  Frame& frame = assembly.frame;
  const double extension = extension_of(needle, prop, site.soffit);
  require_within_range(prop.prop, extension);
  const double place = place_of(prop, site.wall_thickness);
  const int head = needle_node_at(assembly, place);
  const double down = prop.action == PropAction::up ? -1.0 : 1.0;
  const double lean = std::tan(prop_lean_degrees * std::numbers::pi / 180.0);
  const double axis = frame.nodes[static_cast<std::size_t>(head)].y;
  const auto node_at = [&](double along, const std::string& name) {  // distance from the head
    return add_node(frame, place + lean * along, axis + down * along,
                    prop.mark + " prop's " + name);
  };
  const double outer_length = std::min(prop.prop.shortest, extension);
  const int foot = node_at(extension, "foot");
  PropMembers members;
  members.foot_node = foot;
  int below = foot;
  if (extension - outer_length > same_place) {
    below = node_at(extension - outer_length, "collar");
    add_tube(frame, foot, below, prop.prop.outer, prop.mark + " prop");
    members.at_needle = add_tube(frame, below, head, prop.prop.inner, prop.mark + " prop");
  } else {
    members.at_needle = add_tube(frame, foot, head, prop.prop.outer, prop.mark + " prop");
  }
  frame.members.back().pin_to = true;

  FrameSupport held;
  held.node = foot;
  held.x = 0.0;
  frame.supports.push_back(held);
  FrameSpring spring;
  spring.node = foot;
  spring.towards_y = down;
  spring.stiffness = footing_stiffness(prop.footing);
  spring.compression_only = true;
  frame.springs.push_back(spring);
  assembly.props.push_back(members);
}

void add_wall_load(const NeedleFrame& needle, const NeedleSite& site, double load,
                   Assembly& assembly) {
  const std::vector<mesh::Interval> strips = loaded_strips(needle, site.wall_thickness);
  double width = 0.0;
  for (const mesh::Interval& strip : strips) width += strip.length();
  Frame& frame = assembly.frame;
  for (const mesh::Interval& strip : strips) {
    for (const int member : assembly.needle_members) {
      const FrameMember& m = frame.members[static_cast<std::size_t>(member)];
      const double start = frame.nodes[static_cast<std::size_t>(m.from)].x;
      const double end = frame.nodes[static_cast<std::size_t>(m.to)].x;
      FrameLineLoad line;
      line.member = member;
      line.from = std::max(strip.from, start) - start;
      line.to = std::min(strip.to, end) - start;
      if (line.to - line.from < same_place) continue;
      line.y_at_from = line.y_at_to = -load / width;
      frame.line_loads.push_back(line);
    }
  }
}

Assembly assemble(const NeedleFrame& needle, const NeedleSite& site, const NeedleLoad& load) {
  Assembly assembly;
  const double axis = site.soffit - needle.packing.thickness - 0.5 * depth_of(needle.member);
  add_needle(needle, site, load.weight_factor, axis, assembly);
  for (const NeedleProp& prop : needle.props) add_prop(needle, prop, site, assembly);
  add_wall_load(needle, site, load.wall, assembly);
  return assembly;
}

/// Mean downward movement of the needle under the wall's load, mm.
double settlement_of(const Assembly& assembly, const FrameSolution& solution) {
  double moved = 0.0;
  double width = 0.0;
  for (const FrameLineLoad& line : assembly.frame.line_loads) {
    const MemberSolution& member = solution.members[static_cast<std::size_t>(line.member)];
    moved -= mean_displacement(member, line.from, line.to).y() * (line.to - line.from);
    width += line.to - line.from;
  }
  return moved / width;
}

FrameResult solve_second_order(const Assembly& assembly) {
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

void add_diagrams(const Assembly& assembly, const FrameSolution& solution, NeedleAnswer& answer) {
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
  const Assembly assembly = assemble(frame, site, {wall, 0.0});
  const double moved = settlement_of(assembly, solve_second_order(assembly).value());
  return in_series(wall / moved, packing_stiffness(frame, site));
}

NeedleAnswer analyse_needle(const NeedleFrame& frame, const NeedleSite& site,
                            const NeedleLoad& load) {
  const Assembly assembly = assemble(frame, site, load);
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
        solution.members[static_cast<std::size_t>(assembly.props[i].at_needle)];
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
