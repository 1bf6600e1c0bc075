#include "io/note/chapters.h"
#include "io/note/wording.h"
#include "solver/study/stage_facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
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

Table frame_table(const solver::Job& job, std::size_t index) {
  const NeedleFrame& frame = job.needle_frames[index];
  const std::vector<std::string> needles = needles_on(job, index);
  Table content{fmt::format("frame-{}", index + 1),
                "",
                {"Frame", {fmt::format("\u201c{}\u201d, for {}", frame.name, listed(needles))}}};
  content.add({"Needle", member_words(frame, job.thickness)});
  content.add({"Packing above it", packing_words(frame.packing)});
  content.add({"Bears under", bearing_words(frame, job.thickness)});
  for (const NeedleProp& prop : frame.props) {
    content.add({fmt::format("Prop \u201c{}\u201d", prop.mark), prop_words(prop)});
  }
  return content;
}

/// The method, and the stage where there are several.
std::string found_by(const solver::NeedleDemand& demand, bool staged) {
  if (!staged || demand.method == "hand") return demand.method;
  return fmt::format("{}, {}", demand.method, demand.stage);
}

Table answers_table(const std::vector<NeedleDesign>& designs, bool staged) {
  Table content{
      "needle-answers",
      "Each needle under the largest load that any method gives it, unfactored; its own weight is "
      "in the moment and the shear force",
      {"Needle", numeric("Load kN"), "Found by", numeric("Permanent %"), numeric("Moment kNm"),
       numeric("Shear kN"), numeric("Bending mm"), numeric("Wall settles mm"),
       numeric("Stiffness kN/mm"), numeric("Buckling factor")}};
  for (const NeedleDesign& design : designs) {
    const solver::NeedleAnswer& answer = design.answer;
    content.add({design.demand.needle, kilonewtons(answer.wall_load),
                 found_by(design.demand, staged),
                 whole_millimetres(100.0 * design.demand.dead_share),
                 two_decimals(answer.largest_moment / 1e6), kilonewtons(answer.largest_shear),
                 fine_millimetres(answer.bending_deflection), fine_millimetres(answer.settlement),
                 two_decimals(answer.stiffness / 1e3), kilonewtons(answer.buckling_factor * 1e3)});
  }
  return content;
}

const solver::NeedleFrame* frame_of(const solver::Job& job, solver::NeedleId needle) {
  const std::optional<std::size_t> frame = job.needles.at(index_of(needle)).frame;
  return frame ? &job.needle_frames.at(*frame) : nullptr;
}

/// The check of a prop's load against its safe load; null where there is none.
const solver::Check* strength_check(const NeedleDesign& design, const std::string& mark) {
  const std::string member = fmt::format("{} {} prop", design.demand.needle, mark);
  const auto found = std::ranges::find_if(design.checks, [&](const solver::Check& check) {
    return check.member == member && check.check == "prop strength";
  });
  return found == design.checks.end() ? nullptr : &*found;
}

std::string side_words(const NeedleProp& prop) {
  const std::string side = prop.side == solver::PropSide::inside ? "inside" : "outside";
  return prop.action == solver::PropAction::up ? side : side + ", holds down";
}

void add_prop(Table& content, const NeedleDesign& design, const NeedleProp& prop,
              const solver::PropLoad& load) {
  const solver::Check* check = strength_check(design, prop.mark);
  const bool known = check != nullptr && !check->not_verified;
  content.add({design.demand.needle, prop.mark, prop.prop.name, side_words(prop),
               millimetres(prop.distance), whole_millimetres(load.extension),
               kilonewtons(load.load), known ? kilonewtons(check->capacity * 1e3) : "\u2013",
               check == nullptr ? "\u2013" : utilisation_words(*check)},
              check == nullptr ? RowKind::plain : row_kind_of(*check));
}

/// "4 \u00d7 B25, 2 \u00d7 B35".
std::string counted(const std::map<std::string, int>& counts) {
  std::vector<std::string> parts;
  parts.reserve(counts.size());
  for (const auto& [name, count] : counts)
    parts.push_back(fmt::format("{} \u00d7 {}", count, name));
  return listed(parts);
}

Blocks prop_schedule(const solver::JobResult& result) {
  Table content{
      "prop-schedule",
      "Prop schedule: loads and safe loads are unfactored",
      {"Needle", "Prop", "Which", "Side", numeric("From the face mm"), numeric("Set to mm"),
       numeric("Load kN"), numeric("Safe load kN"), numeric("Used")}};
  std::map<std::string, int> counts;
  for (const NeedleDesign& design : result.needle_designs) {
    const solver::NeedleFrame* frame = frame_of(result.job, design.needle);
    if (frame == nullptr) continue;
    const std::size_t known = std::min(frame->props.size(), design.answer.props.size());
    for (std::size_t i = 0; i < known; ++i) {
      add_prop(content, design, frame->props[i], design.answer.props[i]);
      ++counts[frame->props[i].prop.name];
    }
  }
  if (content.rows.empty()) return {};
  return content + Paragraph{"Props in all: " + counted(counts) + "."};
}

Blocks advice_of(const solver::JobResult& result) {
  const std::vector<std::string> lines = needle_advice(result);
  if (lines.empty()) return {};
  return Heading{"What else would do"} + bullets(lines) +
         Paragraph{
             "Each was worked out afresh with the loads above, the wall not solved again: a "
             "stiffer or softer needle also changes what its neighbours take.",
             Tone::small};
}

}  // namespace

std::vector<std::string> needle_advice(const solver::JobResult& result) {
  std::vector<std::string> sentences;
  std::map<std::string, std::vector<std::string>> needles;
  for (const solver::NeedleDesign& design : result.needle_designs) {
    for (const std::string& sentence : design.advice) {
      if (needles[sentence].empty()) sentences.push_back(sentence);
      needles[sentence].push_back(design.demand.needle);
    }
  }
  std::vector<std::string> lines;
  lines.reserve(sentences.size());
  for (const std::string& sentence : sentences) {
    lines.push_back(fmt::format("{}: {}", listed(needles[sentence]), as_sentence(sentence)));
  }
  return lines;
}

Chapter needles_chapter(const solver::JobResult& result, FigureShelf& figures) {
  const solver::Job& job = result.job;
  if (!has_frames(job)) return {};
  Blocks opening;
  Blocks body;
  for (std::size_t index = 0; index < job.needle_frames.size(); ++index) {
    if (needles_on(job, index).empty()) continue;
    (opening.empty() ? opening : body) += frame_table(job, index);
  }
  body += figures.take("plan");
  if (result.needle_designs.empty()) {
    body += Paragraph{"The wall does not stand, so there are no loads to set on the frames."};
  } else {
    body += answers_table(result.needle_designs, is_staged(result)) + prop_schedule(result) +
            advice_of(result);
  }
  body += figures.take_all("needle-");
  return {"needle-frames", "Needles, props and ground", opening, body};
}

}  // namespace deadshore::io
