#include "io/note/chapters.h"
#include "io/note/wording.h"

#include <fmt/format.h>

#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using solver::Check;
using solver::HeldLoad;
using solver::LiftPlan;

Table given_table(const LiftPlan& plan, const solver::Lifting& lifting) {
  Table content{"lift-given", "", {"Going up", "What"}};
  content.add(
      {"Beam",
       fmt::format("{} mm long; {} kN a section, {} kN in all", whole_millimetres(plan.length),
                   fine_kilonewtons(plan.weight_of_one), fine_kilonewtons(plan.weight))});
  content.add({"Lift", fmt::format("{} mm, to its underside", whole_millimetres(plan.lift))});
  content.add(
      {"Way", fmt::format("from {}, {}; {} mm to be clear on every side",
                          lifting.side == solver::PropSide::inside ? "inside" : "outside",
                          lifting.entry == solver::BeamEntry::sideways ? "sideways" : "endways",
                          millimetres(lifting.clearance))});
  content.add({"Weight while it moves",
               fmt::format("\u00d7 {} on the lifters", two_decimals(lifting.dynamic_factor))});
  return content;
}

Table held_table(const LiftPlan& plan) {
  Table content{"lift-loads",
                "What holds it, places from the beam's left end",
                {"Piece", numeric("At mm"), numeric("Load kN"), numeric("A leg kN"),
                 numeric("A fixing kN"), "How"}};
  const std::string none = "\u2013";
  for (const HeldLoad& lifter : plan.lifters) {
    content.add({"Lifter " + lifter.name, whole_millimetres(lifter.at),
                 fine_kilonewtons(lifter.load), none, none, lifter.working});
  }
  for (const HeldLoad& stand : plan.stands) {
    content.add({"Stand " + stand.name, whole_millimetres(stand.at), fine_kilonewtons(stand.load),
                 fine_kilonewtons(stand.per_leg), fine_kilonewtons(stand.per_fixing),
                 stand.working});
  }
  return content;
}

Table way_table(const LiftPlan& plan) {
  Table content{"lift-way",
                "What is in its way, tightest first",
                {"Piece", "What", numeric("Needed mm"), numeric("There mm"), "", "How"}};
  for (const Check& check : plan.checks) {
    if (check.clause != "geometry") continue;
    const bool known = !check.not_verified;
    std::string verdict = check.passes() ? "clear" : "CLASHES: " + check.caution;
    if (!known) verdict = "NOT VERIFIED: " + check.caution;
    content.add({check.member, check.check, known ? whole_millimetres(check.demand) : "\u2013",
                 known ? whole_millimetres(check.capacity) : "\u2013", verdict, check.working},
                row_kind_of(check));
  }
  return content;
}

}  // namespace

Chapter lift_chapter(const solver::JobResult& result) {
  if (!result.lift || !result.job.lifting) return {};
  const LiftPlan& plan = *result.lift;
  List steps = bullets(plan.steps);
  steps.numbered = true;
  Blocks body = steps + held_table(plan) + way_table(plan);
  body += Paragraph{strong("A lifter is never the only thing that holds the beam.") + " " +
                    "Lifters are wound down, leak and are knocked. The stands carry all of it, at "
                    "rest, before anyone reaches under it; their legs and fixings, and the lifters "
                    "against their plates, are among the member checks."};
  body += Paragraph{
      "Looked at are heights, widths and lengths, not the way round corners, and no soles, "
      "scaffolds or people. The floor under lifters and stands is not checked, nor how they stand "
      "out of level. Pockets in the analysis are as deep as the bearings, no deeper. Try the way "
      "with a lath as long as the beam before it is lifted."};
  return {"lift", "The beam\u2019s way up", given_table(plan, *result.job.lifting), body};
}

}  // namespace deadshore::io
