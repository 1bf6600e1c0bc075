#include "viz/wall/panel_marks.h"

#include "solver/job/beam_places.h"
#include "solver/panel/support_reactions.h"
#include "viz/wall/works_marks.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace deadshore::viz {
namespace {

using solver::Job;
using solver::PanelResult;
using solver::StageState;

constexpr double reaction_arrow_length = 20.0;
const TextStyle reaction_style{.size = 7.5, .colour = support};

void draw_base_reaction(Canvas& canvas, const WallView& view, double x, double force) {
  const double y = view.down(0.0) + 6.0;
  const PagePoint tip{view.across(x), y};
  const PagePoint tail{tip.x, y + reaction_arrow_length};
  if (force >= smallest_shown_force) canvas.arrow(tail, tip, reaction_pen());
  if (force <= -smallest_shown_force) canvas.arrow(tip, tail, reaction_pen());
  canvas.text({tail.x, tail.y + 0.5}, kilonewtons(force), reaction_style, {0.5, 0.0});
}

/// `inwards` is +1 where a push on the wall points right on the page.
void draw_thrust(Canvas& canvas, const WallView& view, const Job& job, double x, double inwards,
                 double force) {
  if (!(std::abs(force) >= smallest_shown_force)) return;
  const double y = view.down(0.5 * (job.wall.cut.soffit + job.wall.top_at(x)));
  const PagePoint near{view.across(x) - inwards * (held_strip + 1.5), y};
  const PagePoint far{near.x - inwards * reaction_arrow_length, y};
  if (force > 0.0) canvas.arrow(far, near, reaction_pen());
  if (force < 0.0) canvas.arrow(near, far, reaction_pen());
  canvas.text({near.x, y - 3.0}, kilonewtons(std::abs(force)), reaction_style,
              {inwards > 0.0 ? 1.0 : 0.0, 1.0});
}

bool is_there(const StageState& works, std::size_t needle) {
  return needle < works.needles.size() && solver::is_in(works.needles[needle]);
}

/// Under the padstones, beside the jambs: what the beam's ends bring onto them.
void draw_beam_reactions(Canvas& canvas, const WallView& view, const Job& job,
                         const solver::BeamResult& beam, LabelRoom& room) {
  if (!job.beam) return;
  const solver::BeamPlaces places = solver::places_of_beam(job);
  const double foot = view.down(places.padstones.front().y.from);
  const auto draw = [&](double x, double jamb, double force) {
    if (!(std::abs(force) >= smallest_shown_force)) return;
    const PagePoint tip{view.across(x), foot};
    canvas.arrow({tip.x, tip.y + reaction_arrow_length}, {tip.x, tip.y + 1.0}, reaction_pen());
    room.take({tip.x - 3.0, tip.y, tip.x + 3.0, tip.y + reaction_arrow_length});
    const std::string text = kilonewtons(force);
    Rect start = plate_box({tip.x, tip.y + reaction_arrow_length + 7.0}, text, reaction_style);
    const double edge = view.across(jamb);
    const double aside =
        x < jamb ? std::min(0.0, edge - 2.0 - start.right) : std::max(0.0, edge + 2.0 - start.left);
    start.left += aside;
    start.right += aside;
    draw_plate(canvas, room, text, reaction_style, boxes_around(start, {4.0, 4.0}, 12));
  };
  draw(places.supports.from, job.wall.cut.left, beam.reaction_left);
  draw(places.supports.to, job.wall.cut.right, beam.reaction_right);
}

}  // namespace

std::string masonry_words(solver::MasonryModel model) {
  return std::string(solver::to_string(model)) + " masonry";
}

std::string heading_with(const std::string& heading, const ShownStage& stage) {
  return stage.words.empty() ? heading : heading + ", " + stage.words;
}

Hatch loose_hatch() {
  return {.pen = {.colour = ink, .width = 0.6}, .spacing = 3.6, .angle = -45.0};
}

Pen reaction_pen() {
  return {.colour = support, .width = 1.1};
}

Margins reaction_margins(const Job& job) {
  const auto side = [](solver::WallEnd end) { return end == solver::WallEnd::held ? 48.0 : 14.0; };
  return {side(job.left_end), side(job.right_end), heading_height + 4.0, 42.0};
}

NeedleSetting setting_of(const WallView& view, const Job& job, const StageState& works) {
  NeedleSetting setting;
  setting.on_masonry = !works.cut_out;
  if (job.beam && works.beam)
    setting.drop =
        view.scale * (job.wall.cut.soffit - solver::places_of_beam(job).beam.y.from) + 3.0;
  return setting;
}

void draw_reactions(Canvas& canvas, const WallView& view, const Job& job, const PanelResult& panel,
                    const StageState& works, LabelRoom& room) {
  const mesh::Cut& cut = job.wall.cut;
  for (const solver::SupportReaction& reaction : reactions_of(job, panel)) {
    const bool missing =
        (reaction.support == solver::supports::left_pier && !(cut.left > 0.0)) ||
        (reaction.support == solver::supports::right_pier && !(cut.right < job.wall.length));
    if (reaction.group() == solver::SupportGroup::bases && !missing)
      draw_base_reaction(canvas, view, reaction.x, reaction.force);
  }
  if (job.left_end == solver::WallEnd::held)
    draw_thrust(canvas, view, job, 0.0, 1.0, panel.thrust_left);
  if (job.right_end == solver::WallEnd::held)
    draw_thrust(canvas, view, job, job.wall.length, -1.0, panel.thrust_right);

  std::vector<NeedleText> texts;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    const double force = i < panel.needles.size() ? panel.needles[i].force : 0.0;
    texts.push_back({job.needles[i].name, kilonewtons(force), force >= smallest_shown_force,
                     is_there(works, i)});
  }
  draw_needles(canvas, view, job, texts, room, setting_of(view, job, works));
  if (panel.beam) draw_beam_reactions(canvas, view, job, *panel.beam, room);
}

void draw_named_needles(Canvas& canvas, const WallView& view, const Job& job,
                        const StageState& works, LabelRoom& room) {
  std::vector<NeedleText> texts;
  for (std::size_t i = 0; i < job.needles.size(); ++i)
    texts.push_back({job.needles[i].name, "", false, is_there(works, i)});
  draw_needles(canvas, view, job, texts, room, setting_of(view, job, works));
}

void draw_loose(Canvas& canvas, const WallView& view, const mesh::QuadMesh& mesh,
                const PanelResult& panel) {
  const std::vector<char>& marks = panel.fields.quad_loose;
  if (panel.loose.empty() || static_cast<int>(marks.size()) != mesh.quad_count()) return;
  const std::vector<Loop> loops = view.at(region_of(mesh, marks));
  canvas.fill(loops, white);
  canvas.hatch(loops, loose_hatch());
  canvas.outline(loops, {.colour = ink, .width = 1.0});
}

void label_loose(Canvas& canvas, const WallView& view, const PanelResult& panel, LabelRoom& room) {
  const TextStyle style{.size = 7.5, .bold = true};
  for (const solver::LoosePatch& patch : panel.loose) {
    const std::string text = "loose " + kilonewtons(patch.weight);
    const Rect plate = plate_box(view.at({patch.x.middle(), patch.y.middle()}), text, style);
    const bool inside = view.scale * patch.x.length() > 1.6 * plate.width() &&
                        view.scale * patch.y.length() > 1.6 * plate.height();
    if (!inside)
      room.take({view.across(patch.x.from), view.down(patch.y.to), view.across(patch.x.to),
                 view.down(patch.y.from)});
    const Rect below = plate_box(
        {plate.middle().x, view.down(patch.y.from) + 0.5 * plate.height() + 2.0}, text, style);
    draw_plate(canvas, room, text, style, boxes_around(inside ? plate : below, {6.0, 4.0}, 14));
  }
}

}  // namespace deadshore::viz
