#include "viz/stages/stage_views.h"

#include "viz/drawings.h"
#include "viz/stages/stage_picture.h"
#include "viz/wall/bands.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <atomic>
#include <cmath>
#include <future>
#include <thread>

namespace deadshore::viz {
namespace {

constexpr Margins margins{.left = 14.0, .right = 14.0, .top = 6.0, .bottom = 10.0};

Drawing drawing_of(const solver::JobResult& result, const solver::PanelResult& panel,
                   const ShownStage& shown, const BandScale& scale, const WallPage& page) {
  const StagePicture picture = stage_picture(result, &panel, shown, scale);
  const solver::Job& job = result.job;
  return {page.size, [picture, page, scale, &job](Canvas& canvas) {
            draw_held_ends(canvas, page.view, job);
            draw_stage_picture(canvas, page.view, picture, job, scale);
          }};
}

std::string hex(Colour colour) {
  const auto byte = [](double part) { return static_cast<int>(std::lround(255.0 * part)); };
  return fmt::format("#{:02x}{:02x}{:02x}", byte(colour.red), byte(colour.green),
                     byte(colour.blue));
}

std::vector<SupportSpot> spots_of(const solver::Job& job, const WallPage& page) {
  const mesh::Cut& cut = job.wall.cut;
  const auto spot = [&](const std::string& name, bool is_needle, double x, double y) {
    return SupportSpot{name, is_needle, page.view.across(x) / page.size.width,
                       page.view.down(y) / page.size.height};
  };
  std::vector<SupportSpot> spots;
  const double low = 0.06 * job.wall.height();
  spots.push_back(spot("left pier", false, 0.5 * cut.left, low));
  for (const solver::Needle& needle : job.needles)
    spots.push_back(spot(needle.name, true, needle.x, cut.soffit));
  spots.push_back(spot("right pier", false, 0.5 * (cut.right + job.wall.length), low));
  return spots;
}

/// As many at once as the machine has processors.
void draw_all(std::vector<StageView>& views, const std::vector<Drawing>& drawings) {
  std::atomic<std::size_t> next = 0;
  const auto draw_some = [&] {
    for (std::size_t i = next++; i < views.size(); i = next++) views[i].svg = to_svg(drawings[i]);
  };
  std::vector<std::future<void>> others;
  for (unsigned thread = 1; thread < std::thread::hardware_concurrency(); ++thread)
    others.push_back(std::async(std::launch::async, draw_some));
  draw_some();
  for (std::future<void>& other : others) other.get();
}

}  // namespace

StageViews draw_stage_views(const solver::JobResult& result) {
  if (!is_staged(result)) return {};
  const BandScale scale = compression_scale(result);
  const std::vector<ShownStage> shown = shown_stages(result);
  const WallPage page = fit_wall(result.job.wall, margins);
  StageViews all;
  all.size = page.size;
  all.spots = spots_of(result.job, page);
  for (int band = 0; band <= scale.count; ++band)
    all.scale.push_back({hex(band_tone(band, scale)), band_limit(band * scale.step, scale.step)});
  std::vector<Drawing> drawings;
  for (std::size_t stage = 0; stage < result.stages.size(); ++stage)
    for (const solver::PanelResult& panel : result.stages[stage].analyses) {
      all.views.push_back({stage, panel.model, ""});
      drawings.push_back(drawing_of(result, panel, shown[stage], scale, page));
    }
  draw_all(all.views, drawings);
  return all;
}

}  // namespace deadshore::viz
