#include "solver/shoring/shore_forces.h"

#include "solver/needle/needle_assembly.h"
#include "solver/shoring/head_plate.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <variant>

namespace deadshore::solver {

namespace {

constexpr double same_upright = 1.0;  // mm

enum class ImposedOn { every_bay, odd_bays, even_bays };

/// The force that a dead and an imposed load come to together, N: unfactored, or by the rules.
using Factored = std::function<double(double dead, double imposed)>;

/// Axial stiffness of one upright in series with what it stands on, N/mm.
double stiffness_of(const ShoreFrame& frame, const Upright& upright) {
  Footing footing = frame.footing;
  const double length = upright_length(frame);
  if (const auto* studs = std::get_if<StudRow>(&frame.uprights)) {
    const TimberMember& stud = studs->stud;
    footing.sole.prop_base = upright.count * stud.section.b;
    const double EA = stud.strength_class.E_0_mean * stud.section.area();
    return in_series(upright.count * EA / length, footing_stiffness(footing));
  }
  const auto& props = std::get<PropRow>(frame.uprights);
  footing.sole.prop_base = props.base;
  return in_series(axial_stiffness(props.prop, length), footing_stiffness(footing));
}

/// Places of one joist that are tried, with the others a spacing apart from it; of places that give
/// the same row of joists the first alone.
std::vector<double> joist_places(const ShoreFrame& frame, std::span<const Upright> uprights) {
  const double spacing = frame.joist_spacing;
  std::vector<double> wanted;
  for (const double quarter : {0.5, 0.0, 0.25, 0.75})
    wanted.push_back(frame.x.from + quarter * spacing);
  for (std::size_t i = 0; i < uprights.size(); ++i) {
    wanted.push_back(uprights[i].x);
    if (i > 0) wanted.push_back(0.5 * (uprights[i - 1].x + uprights[i].x));
  }
  std::vector<double> places;
  for (const double x : wanted) {
    const bool known = std::ranges::any_of(places, [&](double other) {
      return std::abs(std::remainder(x - other, spacing)) < same_upright;
    });
    if (!known) places.push_back(x);
  }
  return places;
}

/// Number of the bay that holds `x`; the ends beyond the first and last upright belong to the bays
/// beside them.
std::size_t bay_of(std::span<const Upright> uprights, double x) {
  std::size_t bay = 1;
  while (bay + 1 < uprights.size() && x > uprights[bay].x) ++bay;
  return bay;
}

/// Whether the imposed load at `x` acts in a case. Straight over an upright it bends no bay and
/// always acts.
bool is_on(ImposedOn where, std::span<const Upright> uprights, double x) {
  const bool over_upright = std::ranges::any_of(
      uprights, [x](const Upright& upright) { return std::abs(upright.x - x) < same_upright; });
  if (where == ImposedOn::every_bay || over_upright) return true;
  return (bay_of(uprights, x) % 2 == 1) == (where == ImposedOn::odd_bays);
}

std::vector<PlateForce> forces_of(const std::vector<HeadLoad>& loads, ImposedOn where,
                                  std::span<const Upright> uprights, const Factored& factored) {
  std::vector<PlateForce> forces;
  for (const HeadLoad& load : loads) {
    const double imposed = is_on(where, uprights, load.x) ? load.imposed : 0.0;
    forces.push_back({load.x, factored(load.dead, imposed)});
  }
  return forces;
}

double largest_on_a_joist(const std::vector<HeadLoad>& loads, const Factored& factored) {
  double joist = 0.0;
  double point = 0.0;
  for (const HeadLoad& load : loads) {
    double& largest = load.by_joist ? joist : point;
    largest = std::max(largest, factored(load.dead, load.imposed));
  }
  return joist + point;
}

void keep_worst(const PlateAnswer& answer, ShoreForces& worst) {
  worst.moment = std::max(worst.moment, answer.largest_moment());
  worst.shear = std::max(worst.shear, answer.largest_shear);
  worst.uprights.resize(answer.reactions.size(), 0.0);
  for (std::size_t i = 0; i < answer.reactions.size(); ++i)
    worst.uprights[i] = std::max(worst.uprights[i], answer.reactions[i]);
  if (answer.deflection * worst.deflection_span >= worst.deflection * answer.deflection_span) {
    worst.deflection = answer.deflection;
    worst.deflection_span = answer.deflection_span;
  }
}

ShoreForces worst_forces(const ShoreFrame& frame, std::span<const Upright> uprights,
                         const RowLoads& loads, const Factored& factored) {
  HeadPlate giving = head_plate_of(frame.head, frame.x, factored(1.0, 0.0));
  for (const Upright& upright : uprights)
    giving.supports.push_back({upright.x, stiffness_of(frame, upright)});
  HeadPlate rigid = giving;
  for (PlateSupport& support : rigid.supports) support.stiffness.reset();

  ShoreForces worst;
  constexpr std::array everywhere_or_not = {ImposedOn::every_bay, ImposedOn::odd_bays,
                                            ImposedOn::even_bays};
  for (const double joist : joist_places(frame, uprights)) {
    const std::vector<HeadLoad> on_plate = head_loads(loads, frame, joist);
    worst.joist = std::max(worst.joist, largest_on_a_joist(on_plate, factored));
    for (const ImposedOn where : everywhere_or_not) {
      const std::vector<PlateForce> forces = forces_of(on_plate, where, uprights, factored);
      keep_worst(analyse_head_plate(rigid, forces), worst);
      keep_worst(analyse_head_plate(giving, forces), worst);
    }
    worst.all = giving.weight * frame.x.length();
    for (const HeadLoad& load : on_plate) worst.all += factored(load.dead, load.imposed);
  }
  return worst;
}

}  // namespace

ShoreForces unfactored_forces(const ShoreFrame& frame, std::span<const Upright> uprights,
                              const RowLoads& loads) {
  return worst_forces(frame, uprights, loads,
                      [](double dead, double imposed) { return dead + imposed; });
}

ShoreForces factored_forces(const ShoreFrame& frame, std::span<const Upright> uprights,
                            const RowLoads& loads, const CheckRules& rules) {
  return worst_forces(frame, uprights, loads, [&](double dead, double imposed) {
    return rules.design_load(dead, imposed);
  });
}

}  // namespace deadshore::solver
