#include "solver/beam/beam_case.h"
#include "solver/checks/check.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace deadshore::solver {

namespace {

constexpr double most_overhang = 25.0;   // mm of brick beyond a flange; common practice, no source
constexpr double most_apart = 1500.0;    // mm between separators; common practice, no source
constexpr double bolt_strength = 800.0;  // N/mm2, grade 8.8
constexpr double gamma_M2 = 1.25;        // EN 1993-1-8, UK NA
constexpr double thread_share = 0.78;    // of the shank's area, EN 1993-1-8 A_s, about
constexpr int bolts_at_each = 2;

/// Largest design load that the wall brings a length of the beam, N/mm.
double load_per_length(const BeamDesign& design, const BeamCase& load) {
  double most = 0.0;
  for (const BeamStation& station : load.answer.stations) most = std::max(most, station.packing);
  return design.load_factor * most;
}

/// Brickwork beyond the flanges on each side, mm.
double overhang_of(const BeamDesign& design) {
  return 0.5 * (design.job.thickness - design.beam().flange_width());
}

Check overhang(const BeamDesign& design) {
  Check check;
  check.check = "overhang of the wall";
  check.clause = "common practice, no source";
  check.demand = std::max(0.0, overhang_of(design));
  check.capacity = most_overhang;
  check.unit = "mm";
  check.working =
      fmt::format("wall {:.0f} mm on {:.0f} mm of flanges, half of the rest on each side",
                  design.job.thickness, design.beam().flange_width());
  if (!check.passes())
    check.caution = "take a wider section, two side by side, or a plate on the top flange";
  return check;
}

double plastic_moment(double thickness, double f_y, double gamma) {
  return 0.25 * thickness * thickness * f_y / gamma;  // N mm for each mm along the beam
}

Check plate_check(const char* name, double demand, double capacity, std::string working) {
  Check check;
  check.check = name;
  check.clause = "EN 1993-1-1:2005 6.2.5, as a cantilever";
  check.demand = demand / kN;
  check.capacity = capacity / kN;
  check.unit = "kNm/m";
  check.working = std::move(working);
  return check;
}

/// The plate beyond the flange, and plate and flange together, not joined, beyond the root.
std::vector<Check> plate_checks(const BeamDesign& design, const BeamCase& load) {
  const PermanentBeam& beam = design.beam();
  const SteelSection& section = beam.member.section;
  const double gamma = design.job.check_rules.basis.gamma_M0;
  const double q = load_per_length(design, load);
  const double pressure = q / design.job.thickness;
  const double edge = std::max(0.0, overhang_of(design));
  const double webs = 0.5 * (beam.count - 1) * section.b;  // of the outer web from the middle
  const double root = 0.5 * design.job.thickness - webs - 0.5 * section.tw - section.r;
  const auto moment = [&](double lever) { return 0.5 * pressure * lever * lever; };
  const auto words = [&](double lever) {
    return fmt::format("{:.1f} kN/m / {:.0f} mm over {:.0f} mm", q, design.job.thickness, lever);
  };
  const double plate = plastic_moment(beam.plate_thickness, beam.member.f_y, gamma);
  const double flange = plastic_moment(section.tf, beam.member.f_y, gamma);
  return {
      plate_check("top plate beyond the flange", moment(edge), plate, words(edge)),
      plate_check("top plate and flange at the web", moment(root), plate + flange, words(root))};
}

/// Loads of floors and roofs on a length of the beam, N/mm, design: they come to one side.
double one_sided_load(const BeamDesign& design) {
  double most = 0.0;
  for (const LineLoad& load : design.job.line_loads) {
    const bool over = load.follows_top || load.level >= design.job.wall.cut.soffit;
    if (over) most += load.characteristic();
  }
  return design.load_factor * most;
}

/// Two sections bear alike only as far as separators carry half of what comes to one of them over.
std::vector<Check> separator_checks(const BeamDesign& design) {
  const PermanentBeam& beam = design.beam();
  const std::string name = "bolts and separators";
  if (!(beam.separator_spacing > 0.0))
    return {not_verified(name, "EN 1993-1-8:2005 3.6",
                         fmt::format("{} sections are taken to share the load evenly: give the "
                                     "spacing of the separators that make them",
                                     beam.count))};
  const double spacing = beam.separator_spacing;
  const double transfer = 0.5 * one_sided_load(design) * spacing;
  const double d = beam.bolt_diameter;
  const double area = thread_share * 0.25 * std::numbers::pi * d * d;
  const double shear = 0.6 * bolt_strength * area / gamma_M2;
  constexpr double web_strength = 360.0;  // N/mm2, f_u of S235, the least of the grades
  const double bearing = 1.0 * web_strength * d * beam.member.section.tw / gamma_M2;
  Check bolts;
  bolts.check = name;
  bolts.clause = "EN 1993-1-8:2005 3.6, table 3.4";
  bolts.demand = transfer / bolts_at_each / kN;
  bolts.capacity = std::min(shear, bearing) / kN;
  bolts.unit = "kN";
  bolts.working = fmt::format(
      "floors and roofs, {:.1f} kN/m, come to one section and half goes over: x {:.2f} m on {} "
      "bolts; M{:.0f} 8.8 in shear {:.1f} kN, on a web of {:.1f} mm {:.1f} kN",
      one_sided_load(design), spacing / 1000.0, bolts_at_each, d, shear / kN,
      beam.member.section.tw, bearing / kN);
  Check apart;
  apart.check = "separator spacing";
  apart.clause = "common practice, no source";
  apart.demand = spacing;
  apart.capacity = most_apart;
  apart.unit = "mm";
  apart.working = "one at each bearing too";
  return {bolts, apart};
}

}  // namespace

std::vector<Check> width_checks(const BeamDesign& design, const BeamCase& load) {
  const PermanentBeam& beam = design.beam();
  std::vector<Check> checks;
  const auto add = [&](std::vector<Check> more) {
    std::move(more.begin(), more.end(), std::back_inserter(checks));
  };
  if (beam.plate_thickness > 0.0)
    add(plate_checks(design, load));
  else
    add({overhang(design)});
  if (beam.count > 1) add(separator_checks(design));
  const bool leaves = std::ranges::any_of(
      design.job.needle_frames, [](const NeedleFrame& frame) { return frame.leaves.size() > 1; });
  if (leaves && beam.count == 1)
    add({not_verified(
        "torsion", "EN 1993-1-1:2005 6.2.7",
        "a cavity wall stands on one section: the leaf with the floors twists it; take "
        "one section under each leaf, or have it worked out")});
  return labelled(std::move(checks), beam.name, load.stage);
}

}  // namespace deadshore::solver
