#include "viz/page/dimensions.h"
#include "viz/plan/plan_marks.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <string>

namespace deadshore::viz {
namespace {

using solver::Job;

/// What the needles of each frame are: "needle UC 203x203x46, 1715 long"; named where there are
/// more kinds than one.
std::vector<std::string> needle_words(const Job& job) {
  std::vector<std::string> words;
  for (std::size_t i = 0; i < job.needle_frames.size(); ++i) {
    const solver::NeedleFrame& frame = job.needle_frames[i];
    std::vector<std::string> names;
    for (const solver::Needle& needle : job.needles)
      if (needle.frame == i) names.push_back(needle.name);
    if (names.empty()) continue;
    const std::string who = names.size() == job.needles.size()
                                ? std::string("needle")
                                : fmt::format("{}", fmt::join(names, ", "));
    const auto* steel = std::get_if<solver::SteelMember>(&frame.member);
    const std::string what =
        steel != nullptr ? steel->section.name
                         : fmt::format("{:.0f} × {:.0f} timber", solver::width_of(frame.member),
                                       solver::depth_of(frame.member));
    words.push_back(
        fmt::format("{}: {}, {:.0f} long", who, what, solver::length_of(frame, job.thickness)));
  }
  return words;
}

}  // namespace

std::vector<LegendEntry> plan_legend(const Job& job, const PlanParts& parts) {
  std::vector<LegendEntry> entries{{draw_wall_sign, "wall, cut half way up to the soffit"}};
  for (const std::string& words : needle_words(job))
    entries.push_back({[](Canvas& canvas, const Rect& box) {
                         const double y = box.middle().y;
                         const Rect bar{box.left, y - 2.6, box.right, y + 2.6};
                         canvas.fill(bar, steel_tint);
                         canvas.outline(bar, needle_pen());
                       },
                       words});
  if (!parts.props.empty())
    entries.push_back({[](Canvas& canvas, const Rect& box) {
                         draw_sole_sign(canvas, box);
                         const PagePoint at = box.middle();
                         draw_prop_sign(canvas,
                                        {at.x - 4.0, box.top + 0.5, at.x + 4.0, box.bottom - 0.5},
                                        2.2, false);
                       },
                       "prop on its base and sole plate"});
  if (std::any_of(parts.props.begin(), parts.props.end(),
                  [](const PlanProp& prop) { return prop.holds_down; }))
    entries.push_back(
        {[](Canvas& canvas, const Rect& box) {
           const PagePoint at = box.middle();
           draw_prop_sign(canvas, {at.x - 4.0, box.top, at.x + 4.0, box.bottom}, 2.2, true);
         },
         "prop that holds the needle's tail down"});
  if (!parts.shores.empty())
    entries.push_back(
        {[](Canvas& canvas, const Rect& box) {
           draw_sole_sign(canvas, box);
           const double y = box.middle().y;
           canvas.outline(Rect{box.left, y - 2.0, box.right, y + 2.0}, head_plate_pen());
         },
         "head plate under the joists, over its sole"});
  if (job.beam) entries.push_back(line_entry(beam_place_pen(), "permanent beam in its place"));
  if (job.beam && job.lifting) {
    entries.push_back(
        {[](Canvas& canvas, const Rect& box) {
           canvas.fill(box, tension, lane_shade);
           canvas.arrow({box.left, box.middle().y}, {box.right, box.middle().y}, way_pen());
         },
         "way of the beam"});
    entries.push_back({[](Canvas& canvas, const Rect& box) {
                         canvas.fill(box, white);
                         canvas.outline(box, plan_edge_pen);
                       },
                       "pocket"});
    if (!job.lifting->stands.empty())
      entries.push_back({draw_stand_sign, "stand that holds the beam"});
    if (!job.lifting->lifters.empty())
      entries.push_back(
          {[](Canvas& canvas, const Rect& box) { draw_lifter_sign(canvas, box, true); },
           "lifter: mast and forks, as far out as its load distance"});
  }
  entries.push_back({draw_dimension_sign, "dimensions in mm"});
  const auto note = [&](const std::string& text) {
    entries.push_back({[](Canvas&, const Rect&) {}, text});
  };
  if (parts.soles_overlap)
    note("Soles of neighbouring props overlap as given: one long sole, or shorter ones.");
  std::vector<std::string> bare;
  for (const PlanNeedle& needle : parts.needles)
    if (!needle.known) bare.push_back(needle.name);
  if (!bare.empty())
    note(fmt::format("Props and length not given, so not drawn: {}.", fmt::join(bare, ", ")));
  if (!parts.unknown.empty())
    note(fmt::format("Place not given, so not drawn: {}.", fmt::join(parts.unknown, ", ")));
  return entries;
}

}  // namespace deadshore::viz
