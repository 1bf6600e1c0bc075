#include "io/note/sections.h"
#include "io/note/wording.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using solver::NeedleDesign;
using solver::NeedleProp;

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

}  // namespace

Html prop_schedule(const solver::JobResult& result) {
  Table content{"prop-schedule",
                "Prop schedule: loads and safe loads are unfactored",
                {{"Needle"},
                 {"Prop"},
                 {"Which"},
                 {"Side"},
                 {"From the face mm", true},
                 {"Set to mm", true},
                 {"Load kN", true},
                 {"Safe load kN", true},
                 {"Used", true}},
                {}};
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
  return table(content) + paragraph("Props in all: " + counted(counts) + ".");
}

}  // namespace deadshore::io
