#include "made_up_frame.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace deadshore::viz {
namespace {

solver::SteelMember made_up_steel() {
  solver::SteelMember steel;
  steel.section = {"UC 152x152x23", solver::SectionKind::i_section, 152.4, 152.2, 5.8, 6.8, 7.6};
  steel.properties.mass = 23.0;
  steel.f_y = 275.0;
  return steel;
}

solver::NeedleProp made_up_prop(const std::string& mark, solver::PropSide side, double distance,
                                double level) {
  solver::NeedleProp prop;
  prop.mark = mark;
  prop.side = side;
  prop.distance = distance;
  prop.level = level;
  prop.prop.name = "B35";
  prop.prop.shortest = 2000.0;
  prop.prop.longest = 3500.0;
  prop.prop.outer = {60.3, 3.2};
  prop.prop.inner = {48.3, 3.2};
  prop.footing.sole.timber.section = {225.0, 50.0};
  prop.footing.sole.timber.strength_class.name = "C24";
  prop.footing.sole.length = 900.0;
  prop.footing.sole.prop_base = 150.0;
  prop.footing.ground = {"firm clay", 0.075, false, "invented"};
  prop.footing.subgrade_modulus = 0.02;
  return prop;
}

}  // namespace

solver::NeedleFrame made_up_frame(const std::string& name) {
  solver::NeedleFrame frame;
  frame.name = name;
  frame.member = made_up_steel();
  frame.packing = {50.0, 300.0, 3.0};
  frame.props = {made_up_prop("outer", solver::PropSide::outside, 900.0, -150.0),
                 made_up_prop("inner", solver::PropSide::inside, 600.0, 0.0)};
  return frame;
}

solver::NeedleDesign made_up_design(const solver::NeedleFrame& frame, const solver::Job& job,
                                    solver::NeedleId needle, double load) {
  const double t = job.thickness;
  const double outer = solver::place_of(frame.props.front(), t);
  const double inner = solver::place_of(frame.props.back(), t);
  const double at_outer = load * inner / (inner - outer);

  solver::NeedleDesign design;
  design.needle = needle;
  design.demand = {job.needles[index_of(needle)].name, "hand", "cut", load, 0.6};
  solver::NeedleAnswer& answer = design.answer;
  answer.wall_load = load;
  answer.stiffness = 18e3;
  answer.settlement = load / answer.stiffness;
  answer.span = inner - outer;
  answer.bending_deflection = 1.5;
  answer.buckling_factor = 6.4;
  answer.passes = 3;
  answer.props = {
      {"outer", outer, solver::extension_of(frame, frame.props.front(), 2200.0), at_outer},
      {"inner", inner, solver::extension_of(frame, frame.props.back(), 2200.0), load - at_outer}};
  constexpr int steps = 60;
  for (int i = 0; i <= steps; ++i) {
    const double z = outer + (inner - outer) * i / steps;
    const double borne = load * std::clamp((z + 0.5 * t) / t, 0.0, 1.0);
    const double arm = z <= 0.5 * t ? 0.5 * std::max(0.0, z + 0.5 * t) : z;
    const double moment = at_outer * (z - outer) - borne * arm;
    answer.stations.push_back(
        {z, moment, at_outer - borne,
         1.5 * std::sin(std::numbers::pi * i / static_cast<double>(steps)) + 1.2});
    answer.largest_moment = std::max(answer.largest_moment, std::abs(moment));
    answer.largest_shear = std::max(answer.largest_shear, std::abs(at_outer - borne));
  }
  return design;
}

void put_on_frame(solver::JobResult& result, const solver::NeedleFrame& frame) {
  result.job.needle_frames.push_back(frame);
  for (std::size_t i = 0; i < result.job.needles.size(); ++i) {
    result.job.needles[i].frame = result.job.needle_frames.size() - 1;
    result.needle_designs.push_back(
        made_up_design(frame, result.job, solver::NeedleId{i}, result.comparison[i].hand));
  }
}

}  // namespace deadshore::viz
