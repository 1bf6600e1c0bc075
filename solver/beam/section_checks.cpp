#include "solver/beam/beam_case.h"
#include "solver/beam/load_over_beam.h"
#include "solver/checks/check.h"
#include "solver/checks/member_buckling.h"
#include "solver/checks/steel_checks.h"
#include "solver/job/beam_places.h"

#include <fmt/format.h>

#include <algorithm>

namespace deadshore::solver {

namespace {

/// Evenly loaded simple beam (SN003, from memory, unverified). With C_1 of a uniform moment it is
/// on the safe side from there to a central point load, whose C_1 is 1.348 and C_2 0.630.
constexpr double load_position_factor = 0.454;

/// What one of the beam's sections takes of the design load.
double share_of_one(const BeamDesign& design) {
  return design.load_factor / design.beam().count;
}

/// "cracked: 12.30 kNm x 1.412 / 2 sections; "
std::string source(const BeamDesign& design, const BeamCase& load, double value, double unit,
                   const char* unit_name) {
  const int count = design.beam().count;
  return fmt::format("{}: {:.2f} {} x {:.3f}{}; ", load.method, value / unit, unit_name,
                     design.load_factor,
                     count > 1 ? fmt::format(" / {} sections", count) : std::string());
}

Check with_source(Check check, const std::string& source) {
  if (!check.not_verified) check.working = source + check.working;
  return check;
}

Check bending_with_shear(const BeamDesign& design, const BeamCase& load) {
  const SteelMember& member = design.beam().member;
  const SafetyBasis& basis = design.job.check_rules.basis;
  const double share = share_of_one(design);
  Check worst;
  double at = 0.0;
  double most = -1.0;
  for (const BeamStation& station : load.answer.stations) {
    Check check =
        check_bending_with_shear(member, share * station.moment, share * station.shear, basis);
    if (check.utilisation() <= most) continue;
    most = check.utilisation();
    worst = std::move(check);
    at = station.x;
  }
  return with_source(worst, fmt::format("{}, at x {:.2f} m: ", load.method, at / 1000.0));
}

Check lateral_buckling(const BeamDesign& design, const BeamCase& load) {
  const PermanentBeam& beam = design.beam();
  LateralSpan lateral;
  lateral.length = places_of_beam(design.job).supports.length();
  const bool restrained = beam.restraint_spacing > 0.0;
  if (restrained) {
    lateral.length = std::min(lateral.length, beam.restraint_spacing);
  } else {
    lateral.C_2 = load_position_factor;
    lateral.z_g = 0.5 * beam.member.section.h;
  }
  Check check = check_lateral_buckling(beam.member, lateral,
                                       share_of_one(design) * load.answer.largest_moment,
                                       design.job.check_rules.basis);
  if (!check.caution.empty()) check.caution += "; ";
  check.caution +=
      restrained
          ? "nothing here shows that the restraints hold the top flange sideways"
          : "no sideways restraint between the bearings, where the ends must be held against "
            "twisting: the wall counts as a destabilising load on the top flange";
  return with_source(check, source(design, load, load.answer.largest_moment, kNm, "kNm"));
}

Check end_bearing(const BeamDesign& design, const BeamCase& load, double reaction,
                  const char* where) {
  const PatchLoad end{design.beam().bearing, 0.0};
  const Check check = check_web_bearing(design.beam().member, end, share_of_one(design) * reaction,
                                        where, design.job.check_rules.basis);
  return with_source(check, source(design, load, reaction, kN, "kN"));
}

Check deflection(const BeamDesign& design, const BeamCase& load) {
  Check check = check_deflection(load.answer.sag, places_of_beam(design.job).supports.length(),
                                 1.0 / design.beam().deflection_ratio);
  check.working = fmt::format(
      "{}: all load, unfactored; {}; usual under plain masonry: span / {:.0f} (TMS 402, from "
      "memory)",
      load.method, check.working, 1.0 / masonry_limit);
  return check;
}

}  // namespace

std::vector<Check> section_checks(const BeamDesign& design, const BeamCase& load) {
  const SteelMember& member = design.beam().member;
  const SafetyBasis& basis = design.job.check_rules.basis;
  const BeamResult& answer = load.answer;
  const double share = share_of_one(design);
  return labelled({with_source(check_bending(member, share * answer.largest_moment, basis),
                               source(design, load, answer.largest_moment, kNm, "kNm")),
                   with_source(check_shear(member, share * answer.largest_shear, basis),
                               source(design, load, answer.largest_shear, kN, "kN")),
                   bending_with_shear(design, load), lateral_buckling(design, load),
                   end_bearing(design, load, answer.reaction_left, "at the left bearing"),
                   end_bearing(design, load, answer.reaction_right, "at the right bearing"),
                   deflection(design, load)},
                  design.beam().name, load.stage);
}

}  // namespace deadshore::solver
