#include "viz/stages/stage_picture.h"

#include "viz/wall/bands.h"
#include "viz/wall/crack_map.h"
#include "viz/wall/works_marks.h"

namespace deadshore::viz {

StagePicture stage_picture(const solver::JobResult& result, const solver::PanelResult* panel,
                           const ShownStage& shown, const BandScale& scale) {
  const mesh::QuadMesh& mesh = result.mesh.quads;
  StagePicture picture;
  picture.works = shown.works;
  if (panel == nullptr) {
    picture.outline = region_of(mesh);
    return picture;
  }
  picture.outline = region_of(mesh, quads_there(mesh, panel->fields));
  picture.stands = panel->stands();
  if (!picture.stands) return picture;
  picture.bands = band_regions(mesh, *panel, scale);
  if (!panel->loose.empty() &&
      static_cast<int>(panel->fields.quad_loose.size()) == mesh.quad_count())
    picture.loose = region_of(mesh, panel->fields.quad_loose);
  picture.cracks = panel->cracks;
  return picture;
}

void draw_stage_picture(Canvas& canvas, const WallView& view, const StagePicture& picture,
                        const solver::Job& job, const BandScale& scale) {
  LabelRoom room(view.frame(job.wall));
  const std::vector<Loop> outline = view.at(picture.outline);
  if (!picture.stands) canvas.fill(outline, masonry_tint);
  for (std::size_t k = 0; k < picture.bands.size(); ++k)
    canvas.fill(view.at(picture.bands[k]), band_tone(static_cast<int>(k), scale));
  draw_lintels_there(canvas, view, job.wall, picture.works, LintelStyle::outline);
  if (!picture.loose.empty()) {
    const std::vector<Loop> loose = view.at(picture.loose);
    canvas.fill(loose, white);
    canvas.hatch(loose, {.pen = {.colour = ink, .width = 0.45}, .spacing = 2.2, .angle = -45.0});
    canvas.outline(loose, {.colour = ink, .width = 0.6});
  }
  canvas.outline(outline, {.colour = ink, .width = 0.7});
  draw_permanent_works(canvas, view, job, picture.works);
  draw_dead_shores(canvas, view, job, picture.works, nullptr, room);
  draw_bare_needles(canvas, view, job, picture.works);
  draw_cracks(canvas, view, picture.cracks);
  const double y = view.down(0.0) + 0.4;
  canvas.line({view.across(0.0) - 3.0, y}, {view.across(job.wall.length) + 3.0, y},
              {.colour = ink, .width = 1.0});
}

}  // namespace deadshore::viz
