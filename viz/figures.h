#pragma once

#include "mesh/plane.h"
#include "solver/result/results.h"
#include "viz/page/drawing.h"

#include <string>
#include <vector>

namespace deadshore::viz {

/// One figure, in memory. All its pictures come from the same drawing, which may look at the result
/// again whenever it is drawn: a figure must not outlive its result.
struct Figure {
  std::string name;     ///< for file names: "elevation", "compression-cracked", ...
  std::string caption;  ///< one or two plain sentences
  Drawing drawing;      ///< to be drawn again into a larger document
  std::string svg;      ///< a self-contained document, text as outlines
  std::string pdf;      ///< a document of one page, text searchable
  std::string png;      ///< the bytes of a PNG file
};

/// A name as part of a figure's and a file's: letters and digits, the rest as hyphens.
[[nodiscard]] std::string file_word(std::string name);

/// Draws every figure of a job, in this order: "elevation"; "plan" of needles, props and dead
/// shores; for each analysis "compression-MODEL", "load-flow-MODEL" (lines along the principal
/// stresses) and "deformed-MODEL"; "spread-NEEDLE", the hand sum of each needle as a picture;
/// "needle-loads"; "needle-FRAME" for the most loaded needle of each frame. Of names the letters
/// and digits are kept. With more than one stage the names of those for each analysis end in the
/// stage's name.
///
/// Of a staged job: "elevation"; "plan"; "stages", a landscape page (277 mm wide) with a small
/// picture of every stage; "compression-MODEL-STAGE", "load-flow-MODEL-STAGE" and
/// "deformed-MODEL-STAGE" for the stage at which the needles carry the most, for the last, and for
/// any at which the wall does not stand (then "compression-MODEL-STAGE" alone, which says so);
/// "reactions-by-stage"; "cracks-STAGE" for the stage with the widest cracks; "mechanism" for the
/// stage with the smallest safety factor; "beam" for the stage with its largest moment;
/// "spread-NEEDLE"; "needle-loads"; "needle-FRAME". What there is nothing to show of is left out.
/// Names are unique: a number follows one that is taken.
///
/// All but "stages" and "spread-NEEDLE" (86 mm, so that two stand side by side) are `page_width`
/// (180 mm) wide. No text is smaller than 7 points. Needs no display. Fields that are not finite
/// are left blank. The same result gives the same bytes. \throws std::runtime_error if no usable
/// font is installed.
[[nodiscard]] std::vector<Figure> draw_figures(const solver::JobResult& result);

/// A mark on the wall that is watched while the work goes on.
struct SiteMark {
  std::string name;
  mesh::Point at;
};

/// The wall as cut for a sheet on site, small (72 mm wide) with lettering that can be read at arm's
/// length: needles, marks to watch, beam, the dimensions that set needles and cut out. An SVG
/// document.
[[nodiscard]] std::string site_elevation_svg(const solver::JobResult& result,
                                             const std::vector<SiteMark>& marks);

}  // namespace deadshore::viz
