#include "viz/drawings.h"
#include "viz/page/dimensions.h"
#include "viz/page/legend.h"
#include "viz/section/frame_marks.h"

#include <fmt/format.h>

namespace deadshore::viz {
namespace {

std::string heading_of(const ShownFrame& shown) {
  const std::string& needle = shown.design.demand.needle;
  if (shown.needles == 1)
    return fmt::format("Needle frame \u201c{}\u201d: {}", shown.frame.name, needle);
  return fmt::format("Needle frame \u201c{}\u201d: {}, the most loaded of {}", shown.frame.name,
                     needle, shown.needles);
}

std::string load_words(const solver::NeedleDemand& demand) {
  if (demand.method.empty()) return "load from the wall, unfactored";
  return fmt::format("largest load that any method finds, here {}, unfactored",
                     demand.method == "hand" ? "the hand method" : demand.method + " masonry");
}

std::vector<LegendEntry> legend_of(const ShownFrame& shown) {
  return {hatch_entry(section_hatch(), "masonry cut through"),
          arrow_entry(wall_load_pen(), false, load_words(shown.design.demand)),
          arrow_entry(prop_load_pen(), true, "load on a prop, the needle's weight included"),
          line_entry(beyond_pen(), "pier beyond the cut"),
          {draw_dimension_sign, "dimensions in mm"}};
}

}  // namespace

Drawing needle_frame(const solver::JobResult& result, const solver::NeedleDesign& design) {
  const ShownFrame shown = shown_frame(result, design);
  const std::vector<LegendEntry> legend = legend_of(shown);
  const FramePage page = fit_frame(shown, legend_height(legend, page_width - 8.0));

  return {page.size, [=, title = result.job.title](Canvas& canvas) {
            LabelRoom room({0.0, 0.0, page.size.width, page.size.height});
            draw_heading(canvas, heading_of(shown), title);
            draw_wall_section(canvas, page, shown);
            draw_grounds(canvas, page, shown);
            draw_props(canvas, page, shown);
            draw_needle_side(canvas, page, shown, room);
            draw_wall_load(canvas, page, shown, room);
            draw_frame_dimensions(canvas, page, shown);
            draw_prop_loads(canvas, page, shown, room);
            name_props(canvas, page, shown, room);
            name_needle(canvas, page, shown, room);
            draw_frame_diagrams(canvas, page, shown);
            draw_legend(canvas, legend, {4.0, page.legend}, page_width - 8.0);
          }};
}

}  // namespace deadshore::viz
