#include "solver/needle/needle_assembly.h"

#include "solver/job/error.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace deadshore::solver {

namespace {

/// Softwood across the grain against along it: EN 338 gives E_90 = E_0 / 30.
constexpr double across_grain = 1.0 / 30.0;

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
                double axis, NeedleAssembly& assembly) {
  std::vector<double> places = {0.0};
  for (const NeedleProp& prop : needle.props) places.push_back(place_of(prop, site.wall_thickness));
  std::vector<double> ends = places;
  ends.push_back(-0.5 * site.wall_thickness);
  ends.push_back(0.5 * site.wall_thickness);
  const auto [least, most] = std::minmax_element(ends.begin(), ends.end());
  places.push_back(*least - needle.overhang);
  places.push_back(*most + needle.overhang);

  Frame& frame = assembly.frame;
  for (const double place : mesh::distinct_places(places)) {
    const int node = add_node(frame, place, axis, "needle");
    if (std::abs(place) < mesh::same_place) {
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

int needle_node_at(const NeedleAssembly& assembly, double place) {
  for (std::size_t i = 0; i < assembly.frame.nodes.size(); ++i) {
    if (std::abs(assembly.frame.nodes[i].x - place) < mesh::same_place) return static_cast<int>(i);
  }
  throw SolveError("a needle's prop is not on the needle");
}

/// A prop as a column of an outer and an inner tube, out of plumb, pinned at the needle and on a
/// spring at its foot that lets go of what it would have to pull.
void add_prop(const NeedleFrame& needle, const NeedleProp& prop, const NeedleSite& site,
              NeedleAssembly& assembly) {
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
  int at_needle = 0;
  int below = foot;
  if (extension - outer_length > mesh::same_place) {
    below = node_at(extension - outer_length, "collar");
    add_tube(frame, foot, below, prop.prop.outer, prop.mark + " prop");
    at_needle = add_tube(frame, below, head, prop.prop.inner, prop.mark + " prop");
  } else {
    at_needle = add_tube(frame, foot, head, prop.prop.outer, prop.mark + " prop");
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
  assembly.prop_members.push_back(at_needle);
}

void add_wall_load(const NeedleFrame& needle, const NeedleSite& site, double load,
                   NeedleAssembly& assembly) {
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
      if (line.to - line.from < mesh::same_place) continue;
      line.y_at_from = line.y_at_to = -load / width;
      frame.line_loads.push_back(line);
    }
  }
}

}  // namespace

double footing_stiffness(const Footing& footing) {
  const SolePlate& sole = footing.sole;
  const double E = across_grain * sole.timber.strength_class.E_0_mean;
  const double of_sole = E * sole.prop_base * sole.prop_base / sole.timber.section.h;
  if (footing.subgrade_modulus <= 0.0) return of_sole;
  return in_series(of_sole, footing.subgrade_modulus * ground_contact(sole).area());
}

NeedleAssembly assemble(const NeedleFrame& needle, const NeedleSite& site, const NeedleLoad& load) {
  NeedleAssembly assembly;
  const double axis = site.soffit - needle.packing.thickness - 0.5 * depth_of(needle.member);
  add_needle(needle, site, load.weight_factor, axis, assembly);
  for (const NeedleProp& prop : needle.props) add_prop(needle, prop, site, assembly);
  add_wall_load(needle, site, load.wall, assembly);
  return assembly;
}

}  // namespace deadshore::solver
