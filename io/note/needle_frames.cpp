#include "io/note/member_wording.h"
#include "io/note/sections.h"
#include "io/note/wording.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <variant>
#include <vector>

namespace deadshore::io {
namespace {

using solver::NeedleDesign;
using solver::NeedleFrame;
using solver::NeedleProp;

std::vector<std::string> needles_on(const solver::Job& job, std::size_t frame) {
  std::vector<std::string> names;
  for (const solver::Needle& needle : job.needles) {
    if (needle.frame == frame) names.push_back(needle.name);
  }
  return names;
}

bool has_frames(const solver::Job& job) {
  return std::ranges::any_of(job.needles,
                             [](const auto& needle) { return needle.frame.has_value(); });
}

std::string member_words(const NeedleFrame& frame, double thickness) {
  return fmt::format("{}; {} mm long with {} mm beyond its last props; {} kN/m",
                     made_of(frame.member), whole_millimetres(solver::length_of(frame, thickness)),
                     millimetres(frame.overhang), two_decimals(solver::weight_of(frame.member)));
}

std::string packing_words(const solver::Packing& packing) {
  if (packing.thickness <= 0.0) return "none: the wall bears on the needle itself";
  return fmt::format("{} mm, E {} N/mm\u00b2, strength {} N/mm\u00b2",
                     millimetres(packing.thickness), significant(packing.E, 4),
                     significant(packing.strength, 3));
}

std::string bearing_words(const NeedleFrame& frame, double thickness) {
  if (frame.leaves.empty()) {
    return fmt::format("the wall's whole thickness, {} mm", millimetres(thickness));
  }
  std::vector<std::string> leaves;
  for (const mesh::Interval& leaf : frame.leaves) {
    leaves.push_back(fmt::format("{} to {} mm", millimetres(leaf.from), millimetres(leaf.to)));
  }
  return fmt::format("leaves {} from the outer face", listed(leaves));
}

std::string stands_on(const NeedleProp& prop) {
  const solver::Footing& footing = prop.footing;
  const bool up = prop.action == solver::PropAction::up;
  const std::string ground = ground_words(footing);
  const solver::TimberSection& sole = footing.sole.timber.section;
  return fmt::format("{} a sole {} \u00d7 {} mm, {}, {} mm of its length a prop, {} {}, {}",
                     up ? "on" : "wedged against", millimetres(sole.b), millimetres(sole.h),
                     footing.sole.timber.strength_class.name, millimetres(footing.sole.length),
                     up ? "on" : "under", up || !ground.empty() ? ground : "what is above",
                     level_words(prop.level));
}

std::string prop_words(const NeedleProp& prop) {
  return fmt::format("{}; {} mm from the {} face, {}", made_of(prop.prop),
                     millimetres(prop.distance),
                     prop.side == solver::PropSide::inside ? "inside" : "outside", stands_on(prop));
}

Html frame_table(const solver::Job& job, std::size_t index) {
  const NeedleFrame& frame = job.needle_frames[index];
  const std::vector<std::string> needles = needles_on(job, index);
  Table content{fmt::format("frame-{}", index + 1),
                "",
                {{"Frame"}, {fmt::format("\u201c{}\u201d, for {}", frame.name, listed(needles))}},
                {}};
  content.add({"Needle", member_words(frame, job.thickness)});
  content.add({"Packing above it", packing_words(frame.packing)});
  content.add({"Bears under", bearing_words(frame, job.thickness)});
  for (const NeedleProp& prop : frame.props) {
    content.add({fmt::format("Prop \u201c{}\u201d", prop.mark), prop_words(prop)});
  }
  return table(content);
}

/// The method, and the stage where there are several.
std::string found_by(const solver::NeedleDemand& demand, bool staged) {
  if (!staged || demand.method == "hand") return demand.method;
  return fmt::format("{}, {}", demand.method, demand.stage);
}

Html answers_table(const std::vector<NeedleDesign>& designs, bool staged) {
  Table content{"needle-answers",
                "Each needle under the largest load that any method gives it, unfactored; its own "
                "weight is in the moment and the shear force",
                {{"Needle"},
                 {"Load kN", true},
                 {"Found by"},
                 {"Permanent %", true},
                 {"Moment kNm", true},
                 {"Shear kN", true},
                 {"Bending mm", true},
                 {"Wall settles mm", true},
                 {"Stiffness kN/mm", true},
                 {"Buckling factor", true}},
                {}};
  for (const NeedleDesign& design : designs) {
    const solver::NeedleAnswer& answer = design.answer;
    content.add({design.demand.needle, kilonewtons(answer.wall_load),
                 found_by(design.demand, staged),
                 whole_millimetres(100.0 * design.demand.dead_share),
                 two_decimals(answer.largest_moment / 1e6), kilonewtons(answer.largest_shear),
                 fine_millimetres(answer.bending_deflection), fine_millimetres(answer.settlement),
                 two_decimals(answer.stiffness / 1e3), kilonewtons(answer.buckling_factor * 1e3)});
  }
  return table(content);
}

Html advice_of(const solver::JobResult& result) {
  const std::vector<std::string> lines = needle_advice(result);
  if (lines.empty()) return {};
  return element("h3", text("What else would do")) + bullets(lines) +
         paragraph(
             "Each was worked out afresh with the loads above, the wall not solved again: a "
             "stiffer or softer needle also changes what its neighbours take.",
             "small");
}

}  // namespace

Chapter needles_section(const solver::JobResult& result, FigureShelf& figures) {
  const solver::Job& job = result.job;
  if (!has_frames(job)) return {};
  Html opening;
  Html body;
  for (std::size_t index = 0; index < job.needle_frames.size(); ++index) {
    if (needles_on(job, index).empty()) continue;
    (opening.empty() ? opening : body) += frame_table(job, index);
  }
  body += figures.take("plan");
  if (result.needle_designs.empty()) {
    body += paragraph("The wall does not stand, so there are no loads to set on the frames.");
  } else {
    body += answers_table(result.needle_designs, is_staged(result)) + prop_schedule(result) +
            advice_of(result);
  }
  body += figures.take_all("needle-");
  return section("needle-frames", "Needles, props and ground", opening, body);
}

}  // namespace deadshore::io
