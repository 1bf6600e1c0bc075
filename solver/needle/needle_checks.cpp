#include "solver/needle/needle_checks.h"

#include "solver/checks/check.h"
#include "solver/checks/masonry_checks.h"
#include "solver/checks/member_buckling.h"
#include "solver/checks/prop_checks.h"
#include "solver/checks/steel_checks.h"
#include "solver/job/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

namespace deadshore::solver {

namespace {

/// Factor on the design loads at which the frame must not yet buckle. Forces are those of a full
/// second-order analysis of the frame out of plumb, which EN 1993-1-1:2005 5.2.2(5) asks for below
/// a factor of 3; the margin that is left beyond it is common practice, no source.
constexpr double least_buckling_factor = 1.5;

/// Of a prop's head plate, through which its tube bears 1 to 1 on the needle, mm. Common practice,
/// no source.
constexpr double head_plate_thickness = 8.0;

/// Load of a wall in the middle of a needle, above its shear centre: C_2 of a central point load
/// (SN003, from memory, unverified) with C_1 of a uniform moment, both on the safe side.
constexpr double load_position_factor = 0.63;

/// The answers to unfactored and to factored loads.
struct Answers {
  NeedleAnswer service;
  NeedleAnswer factored;
};

NeedleLoad factored_load(const NeedleDemand& demand, const CheckRules& rules) {
  const bool permissible = rules.basis.method == SafetyMethod::permissible;
  const double dead = demand.dead_share * demand.load;
  return {rules.design_load(dead, demand.load - dead), permissible ? 1.0 : rules.factors.gamma_G};
}

Answers answers_for(const NeedleFrame& frame, const NeedleSite& site, const NeedleDemand& demand,
                    const CheckRules& rules) {
  return {analyse_needle(frame, site, {demand.load, 1.0}),
          analyse_needle(frame, site, factored_load(demand, rules))};
}

/// The station where moment and shear together come closest to the resistance.
NeedleStation worst_station(const SteelMember& member, const NeedleAnswer& answer,
                            const SafetyBasis& basis) {
  NeedleStation worst;
  double most = -1.0;
  for (const NeedleStation& station : answer.stations) {
    const double utilisation =
        check_bending_with_shear(member, station.moment, station.shear, basis).utilisation();
    if (utilisation <= most) continue;
    most = utilisation;
    worst = station;
  }
  return worst;
}

/// From the needle's nearer end to the near edge of a prop's head plate, mm.
double end_distance(const NeedleAnswer& answer, const PropLoad& prop, double plate) {
  const double start = answer.stations.front().z;
  const double end = answer.stations.back().z;
  return std::max(0.0, std::min(prop.place - start, end - prop.place) - 0.5 * plate);
}

double thinnest(const std::vector<mesh::Interval>& strips) {
  double least = std::numeric_limits<double>::infinity();
  for (const mesh::Interval& strip : strips) least = std::min(least, strip.length());
  return least;
}

double total(const std::vector<mesh::Interval>& strips) {
  double sum = 0.0;
  for (const mesh::Interval& strip : strips) sum += strip.length();
  return sum;
}

/// Nothing holds a needle's top flange, and its ends are kept from tilting by their seats on the
/// props alone: its effective length is its span and twice its depth (BS 5950-1:2000 table 13,
/// partial torsional restraint by pressure on the supports; withdrawn, from memory), with the load
/// on top.
LateralSpan lateral_span(const SteelMember& steel, double span) {
  LateralSpan lateral;
  lateral.length = span + 2.0 * steel.section.h;
  lateral.C_2 = load_position_factor;
  lateral.z_g = 0.5 * steel.section.h;
  return lateral;
}

std::vector<Check> steel_checks(const NeedleFrame& frame, const SteelMember& steel,
                                const std::vector<mesh::Interval>& strips, const Answers& answers,
                                const CheckRules& rules) {
  const NeedleAnswer& factored = answers.factored;
  const SafetyBasis& basis = rules.basis;
  const NeedleStation both = worst_station(steel, factored, basis);
  std::vector<Check> checks = {
      check_bending(steel, factored.largest_moment, basis),
      check_shear(steel, factored.largest_shear, basis),
      check_bending_with_shear(steel, both.moment, both.shear, basis),
      check_lateral_buckling(steel, lateral_span(steel, factored.span), factored.largest_moment,
                             basis),
  };
  PatchLoad wall;
  wall.stiff_length = thinnest(strips);
  const double on_strip = factored.wall_load * wall.stiff_length / total(strips);
  checks.push_back(check_web_bearing(steel, wall, on_strip, "under the wall", basis));
  checks.push_back(
      check_web_bearing_with_bending(steel, wall, on_strip, factored.largest_moment, basis));
  for (std::size_t i = 0; i < frame.props.size(); ++i) {
    const NeedleProp& prop = frame.props[i];
    PatchLoad head;
    head.stiff_length = std::min(prop.footing.sole.prop_base,
                                 prop.prop.inner.diameter + 2.0 * head_plate_thickness);
    head.end_distance = end_distance(factored, factored.props[i], head.stiff_length);
    checks.push_back(check_web_bearing(steel, head, factored.props[i].load,
                                       fmt::format("at the {} prop", prop.mark), basis));
  }
  return checks;
}

std::vector<Check> timber_checks(const NeedleFrame& frame, const TimberMember& timber,
                                 const std::vector<mesh::Interval>& strips, const Answers& answers,
                                 const CheckRules& rules) {
  const NeedleAnswer& factored = answers.factored;
  const SafetyBasis& basis = rules.basis;
  std::vector<Check> checks = {
      check_timber_bending(timber, factored.largest_moment, basis,
                           timber_lateral_factor(timber, factored.span)),
      check_timber_shear(timber, factored.largest_shear, basis),
  };
  const auto add_bearing = [&](double length, double force, const std::string& where) {
    GrainBearing bearing;
    bearing.length = length;
    bearing.width = timber.section.b;
    Check check = check_bearing_across_grain(timber, bearing, force, basis);
    check.check += " " + where;
    checks.push_back(check);
  };
  add_bearing(thinnest(strips), factored.wall_load * thinnest(strips) / total(strips),
              "under the wall");
  for (std::size_t i = 0; i < frame.props.size(); ++i) {
    add_bearing(frame.props[i].footing.sole.prop_base, factored.props[i].load,
                fmt::format("at the {} prop", frame.props[i].mark));
  }
  return checks;
}

Check packing_check(const NeedleFrame& frame, const MasonryAbove& masonry,
                    const std::vector<mesh::Interval>& strips, double load,
                    const SafetyBasis& basis) {
  const double along = bearing_of(frame, masonry);
  const double area = total(strips) * along;
  Check check;
  check.check = "packing under the wall";
  check.clause = "EN 1996-1-1 2.4.3, as masonry";
  check.demand = load / area;
  check.capacity = frame.packing.strength / basis.gamma_masonry;
  check.unit = "N/mm2";
  check.working = fmt::format("{:.1f} kN / ({:.0f} x {:.0f} mm); {:.2f} N/mm2 / {:.2f}", load / kN,
                              total(strips), along, frame.packing.strength, basis.gamma_masonry);
  return check;
}

/// One row for a solid wall. Of a cavity wall one for each leaf, which takes its part of the wall's
/// weight by thickness, and as if the floors and the roof all stood on it.
std::vector<Check> masonry_checks(const NeedleFrame& frame, const NeedleSite& site,
                                  const MasonryAbove& masonry,
                                  const std::vector<mesh::Interval>& strips, double load,
                                  const SafetyBasis& basis) {
  const bool leaves = strips.size() > 1;
  ConcentratedLoad concentrated;
  concentrated.bearing_length = bearing_of(frame, masonry);
  concentrated.near_end = std::min(masonry.near_side, masonry.far_side);
  concentrated.far_end = std::max(masonry.near_side, masonry.far_side);
  concentrated.height = masonry.height;
  std::vector<Check> checks;
  for (std::size_t i = 0; i < strips.size(); ++i) {
    concentrated.bearing_depth = strips[i].length();
    concentrated.thickness = frame.leaves.empty() ? site.wall_thickness : strips[i].length();
    const double share = masonry.share_of_loads +
                         (1.0 - masonry.share_of_loads) * strips[i].length() / total(strips);
    Check check =
        check_concentrated_load(concentrated, leaves ? share * load : load, masonry.f_k, basis);
    check.check = "masonry above the needle";
    if (leaves) {
      check.check += fmt::format(", leaf {}", i + 1);
      check.working += fmt::format(
          "; {:.0f}% of the needle's load, as if every floor and roof "
          "stood on this leaf",
          100.0 * share);
    }
    checks.push_back(std::move(check));
  }
  return checks;
}

std::vector<Check> foot_checks(const NeedleProp& prop, double service_load, double factored_load,
                               const SafetyBasis& basis) {
  const Footing& footing = prop.footing;
  std::vector<Check> checks = {check_sole_bending(footing.sole, factored_load, basis),
                               check_sole_bearing(footing.sole, factored_load, basis)};
  checks.push_back(footing.suspended_floor.empty()
                       ? check_ground_pressure(footing.sole, footing.ground, service_load)
                       : check_suspended_floor(footing.suspended_floor, service_load));
  return checks;
}

/// Whether the frame stands under a load from the wall, its weight and the load both factored.
bool carries(const NeedleFrame& frame, const NeedleSite& site, const NeedleLoad& load) {
  try {
    static_cast<void>(analyse_needle(frame, site, load));
    return true;
  } catch (const SolveError&) {
    return false;
  }
}

/// The largest load from the wall, unfactored, under which the frame stands in `answers_for`, N.
double limit_of(const NeedleFrame& frame, const NeedleSite& site, const NeedleDemand& demand,
                const CheckRules& rules) {
  const auto stands_under = [&](double load) {
    NeedleDemand other = demand;
    other.load = load;
    return carries(frame, site, factored_load(other, rules));
  };
  double stands = 0.0;
  double falls = demand.load;
  while (falls - stands > 0.005 * demand.load) {
    const double middle = 0.5 * (stands + falls);
    (stands_under(middle) ? stands : falls) = middle;
  }
  return stands;
}

Check cannot_stand(const NeedleFrame& frame, const NeedleSite& site, const NeedleDemand& demand,
                   const CheckRules& rules, const std::string& reason) {
  Check check;
  check.check = "frame stands";
  check.clause = "EN 1993-1-1:2005 5.2.1, second order";
  check.demand = demand.load / kN;
  check.capacity = limit_of(frame, site, demand, rules) / kN;
  check.unit = "kN";
  check.working = fmt::format(
      "{} brings {:.1f} kN; the needle on its props stands up to {:.1f} kN, unfactored: {}",
      demand.method, check.demand, check.capacity, reason);
  check.caution = "no other check of this needle, its props and their feet could be made";
  return check;
}

}  // namespace

double bearing_of(const NeedleFrame& frame, const MasonryAbove& masonry) {
  return std::min(width_of(frame.member), masonry.bearing_width);
}

std::vector<Check> check_needle(const NeedleFrame& frame, const NeedleSite& site,
                                const NeedleDemand& demand, const MasonryAbove& masonry,
                                const CheckRules& rules) {
  Answers answers;
  try {
    answers = answers_for(frame, site, demand, rules);
  } catch (const SolveError& error) {
    return labelled({cannot_stand(frame, site, demand, rules, error.what())}, demand.needle,
                    demand.stage);
  }
  const std::vector<mesh::Interval> strips = loaded_strips(frame, site.wall_thickness);
  const double wall_load = answers.factored.wall_load;
  std::vector<Check> all;
  const auto add = [&](const std::string& member, std::vector<Check> checks) {
    for (Check& check : labelled(std::move(checks), member, demand.stage)) {
      all.push_back(std::move(check));
    }
  };
  if (const auto* steel = std::get_if<SteelMember>(&frame.member)) {
    add(demand.needle, steel_checks(frame, *steel, strips, answers, rules));
  } else {
    add(demand.needle,
        timber_checks(frame, std::get<TimberMember>(frame.member), strips, answers, rules));
  }
  add(demand.needle,
      {check_deflection(answers.service.bending_deflection, answers.service.span),
       check_frame_buckling(answers.factored.buckling_factor, least_buckling_factor)});
  add(demand.needle, masonry_checks(frame, site, masonry, strips, wall_load, rules.basis));
  if (frame.packing.thickness > 0.0) {
    add(demand.needle, {packing_check(frame, masonry, strips, wall_load, rules.basis)});
  }
  for (std::size_t i = 0; i < frame.props.size(); ++i) {
    const NeedleProp& prop = frame.props[i];
    const PropLoad& service = answers.service.props[i];
    const std::string name = fmt::format("{} {} prop", demand.needle, prop.mark);
    add(name, {check_prop(prop.prop, service.extension, service.load, rules.prop_basis)});
    add(name, foot_checks(prop, service.load, answers.factored.props[i].load, rules.basis));
  }
  sort_worst_first(all);
  return all;
}

}  // namespace deadshore::solver
