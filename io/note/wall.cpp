#include "io/note/chapters.h"
#include "io/note/wording.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

std::string end_of(solver::WallEnd end) {
  return end == solver::WallEnd::held ? "held sideways above the soffit" : "free";
}

std::string outline_of(const mesh::WallShape& wall) {
  std::vector<std::string> points;
  for (const mesh::Point& point : wall.top) {
    points.push_back(fmt::format("({}, {})", millimetres(point.x), millimetres(point.y)));
  }
  return fmt::format("top runs through {} mm", listed(points));
}

Table wall_table(const solver::Job& job) {
  const mesh::WallShape& wall = job.wall;
  Table content{"wall-geometry", "", {"Wall", "As given"}};
  content.add({"Length", millimetres(wall.length) + " mm"});
  content.add({"Height", millimetres(wall.height()) + " mm"});
  if (wall.top.size() > 2) content.add({"Outline (x, y)", outline_of(wall)});
  content.add({"Thickness", millimetres(job.thickness) + " mm"});
  content.add({"Left end", end_of(job.left_end)});
  content.add({"Right end", end_of(job.right_end)});
  content.add(
      {"Cut", fmt::format("from x = {} to {} mm, {} mm wide; soffit {} mm above the base",
                          millimetres(wall.cut.left), millimetres(wall.cut.right),
                          millimetres(wall.cut.span().length()), millimetres(wall.cut.soffit))});
  return content;
}

Blocks openings_table(const mesh::WallShape& wall) {
  if (wall.openings.empty()) return Paragraph{"There are no other openings."};
  Table content{"openings",
                "",
                {"Opening", numeric("From x mm"), numeric("To x mm"), numeric("Sill mm"),
                 numeric("Head mm"), numeric("Arch rise mm")}};
  for (const mesh::Opening& opening : wall.openings) {
    content.add({opening.name, millimetres(opening.left), millimetres(opening.right()),
                 millimetres(opening.sill), millimetres(opening.crown()),
                 opening.rise > 0.0 ? millimetres(opening.rise) : "flat"});
  }
  return content;
}

Blocks lintels_table(const solver::Job& job) {
  if (job.lintels.empty()) return {};
  Table content{"lintels",
                "",
                {"Lintel", "Over", numeric("Depth mm"), numeric("Bearing mm"),
                 numeric("Through the wall mm")}};
  for (const solver::Lintel& lintel : job.lintels) {
    const mesh::Opening& opening = job.wall.openings.at(lintel.shape.opening);
    content.add({lintel.shape.name, opening.name, millimetres(lintel.shape.depth),
                 millimetres(lintel.shape.bearing), millimetres(lintel.thickness)});
  }
  return content;
}

Table materials_table(const solver::Job& job) {
  Table content{
      "materials",
      "",
      {"Material", numeric("Unit weight kN/m\u00b3"), numeric("E N/mm\u00b2"), numeric("\u03bd"),
       numeric("Compressive strength N/mm\u00b2"), numeric("Tensile strength N/mm\u00b2")}};
  const solver::Masonry& masonry = job.masonry;
  content.add({masonry.name, significant(masonry.unit_weight * 1e6, 4), significant(masonry.E, 6),
               significant(masonry.nu, 3), significant(masonry.compressive_strength, 4),
               significant(masonry.tensile_strength, 3)});
  for (const solver::Lintel& lintel : job.lintels) {
    content.add({fmt::format("{} ({})", lintel.material, lintel.shape.name),
                 significant(lintel.unit_weight * 1e6, 4), significant(lintel.E, 6),
                 significant(lintel.nu, 3), "elastic", "elastic"});
  }
  return content;
}

std::string stiffness_of(const solver::Job& job, const solver::Needle& needle) {
  if (needle.frame) return "from \u201c" + job.needle_frames.at(*needle.frame).name + "\u201d";
  return significant(needle.stiffness / 1e3, 4);
}

Table needles_table(const solver::Job& job) {
  Table content{"needles",
                "",
                {"Needle", numeric("Middle at x mm"), numeric("Bearing width mm"),
                 numeric("Stiffness kN/mm"), numeric("Slack mm"), numeric("Preload kN")}};
  for (const solver::Needle& needle : job.needles) {
    content.add({needle.name, millimetres(needle.x), millimetres(needle.bearing_width),
                 stiffness_of(job, needle), significant(needle.slack, 3),
                 kilonewtons(needle.preload)});
  }
  return content;
}

std::string joist_ends_words(const solver::DeadShore& shore) {
  if (!shore.joist_ends) return "not counted on";
  const solver::DeadShore::JoistEnds& ends = *shore.joist_ends;
  return fmt::format("catch the wall after {} mm, {} kN/mm each, every {} mm",
                     millimetres(ends.gap), significant(ends.stiffness / 1e3, 3),
                     millimetres(ends.spacing));
}

Blocks shores_table(const solver::Job& job) {
  if (job.dead_shores.empty()) return {};
  Table content{
      "dead-shores", "", {"Dead shore", "Carries", numeric("Part of it %"), "Its joist ends"}};
  for (const solver::DeadShore& shore : job.dead_shores) {
    const solver::LineLoad& load = job.line_loads.at(index_of(shore.carries));
    content.add(
        {shore.name, load.name, whole_millimetres(100.0 * shore.share), joist_ends_words(shore)});
  }
  return content;
}

}  // namespace

Chapter wall_chapter(const solver::Job& job, FigureShelf& figures) {
  const Blocks opening =
      Paragraph{
          "x runs along the wall from its left end; heights are above the base, where the piers "
          "stand."} +
      wall_table(job);
  const bool any_framed =
      std::ranges::any_of(job.needles, [](const auto& needle) { return needle.frame.has_value(); });
  const Blocks body =
      openings_table(job.wall) + lintels_table(job) + materials_table(job) + needles_table(job) +
      shores_table(job) +
      Paragraph{
          "Stiffness is that of the whole support under the wall: needle, props, packing, "
          "plates and ground together; where it comes from a needle frame, see there.",
          Tone::small};
  const Blocks drawn = figures.take("elevation");
  const Blocks plan = any_framed ? Blocks() : figures.take("plan");
  return {"wall", "The wall, its materials and the needles", opening, body + drawn + plan};
}

}  // namespace deadshore::io
