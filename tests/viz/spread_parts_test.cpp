#include "viz/spread/spread_parts.h"

#include "figure_facts.h"
#include "made_up_job.h"
#include "solver/spread/spread.h"
#include "tests/some.h"
#include "viz/drawings.h"
#include "viz/page/canvas.h"
#include "viz/page/figure_list.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace deadshore::viz {
namespace {

using solver::Job;
using solver::SpreadItem;

/// A gable over a cut with an arched window and a flat one over the needles.
Job gable() {
  Job job = made_up_result().job;
  job.wall.top = {{0.0, 4200.0}, {3000.0, 6200.0}, {6000.0, 4200.0}};
  job.wall.openings = {{"arched", 1500.0, 3200.0, 800.0, 900.0, 250.0},
                       {"flat", 3300.0, 3000.0, 700.0, 800.0, 0.0}};
  job.wall.lintels = {{"stone lintel", 1, 200.0, 150.0}};
  job.lintels.front().shape = job.wall.lintels.front();
  job.line_loads[0].follows_top = true;
  job.line_loads.erase(job.line_loads.begin() + 1);
  job.point_loads[0].level = 4500.0;
  return job;
}

double straight_area(const SpreadParts& parts, int lintel) {
  double area = 0.0;
  for (const SpreadPatch& patch : parts.patches)
    if (patch.over < 0 && !patch.wedge && patch.lintel == lintel) area += area_of({patch.outline});
  return area;
}

const SpreadItem* straight_item(const solver::SpreadSum& sum, const std::string& name) {
  for (const SpreadItem& item : sum.items)
    if (item.name == name && !item.over_opening && !item.wedge) return &item;
  return nullptr;
}

TEST(SpreadParts, HaveTheAreasOfTheHandSum) {
  for (const Job& job : {made_up_result().job, gable()}) {
    const solver::SpreadResult hand = solver::spread_at_45_degrees(job);
    for (std::size_t i = 0; i < job.needles.size(); ++i) {
      const SpreadParts parts = spread_parts(job, static_cast<int>(i));
      const SpreadItem* masonry = straight_item(hand.needles[i], "masonry");
      ASSERT_NE(masonry, nullptr);
      EXPECT_NEAR(straight_area(parts, -1), masonry->area, 1e-5 * masonry->area) << i;
      const SpreadItem* lintel = straight_item(hand.needles[i], "stone lintel");
      EXPECT_NEAR(straight_area(parts, 0), lintel == nullptr ? 0.0 : lintel->area, 1.0) << i;
    }
  }
}

TEST(SpreadParts, HaveTheLengthsOfTheHandSum) {
  for (const Job& job : {made_up_result().job, gable()}) {
    const solver::SpreadResult hand = solver::spread_at_45_degrees(job);
    for (std::size_t i = 0; i < job.needles.size(); ++i) {
      const SpreadParts parts = spread_parts(job, static_cast<int>(i));
      for (std::size_t k = 0; k < job.line_loads.size(); ++k) {
        double length = 0.0;
        for (const SpreadStretch& stretch : some(parts.line_loads))
          if (stretch.load == static_cast<int>(k) && stretch.over < 0 && !stretch.wedge)
            length += stretch.x.length();
        const SpreadItem* item = straight_item(hand.needles[i], job.line_loads[k].name);
        const double booked =
            item == nullptr ? 0.0 : item->load / job.line_loads[k].characteristic();
        EXPECT_NEAR(length, booked, 1e-3) << job.line_loads[k].name << " on " << i;
      }
    }
  }
}

TEST(SpreadParts, ShowWhatComesRoundAnOpeningWhereTheSumHasIt) {
  const Job job = gable();
  const solver::SpreadResult hand = solver::spread_at_45_degrees(job);
  int rounded = 0;
  for (std::size_t i = 0; i < job.needles.size(); ++i) {
    const SpreadParts parts = spread_parts(job, static_cast<int>(i));
    const bool drawn = std::any_of(parts.patches.begin(), parts.patches.end(),
                                   [](const SpreadPatch& patch) { return patch.over >= 0; });
    const auto& items = hand.needles[i].items;
    const bool booked = std::any_of(items.begin(), items.end(),
                                    [](const SpreadItem& item) { return item.over_opening; });
    EXPECT_EQ(drawn, booked) << i;
    rounded += booked ? 1 : 0;
  }
  EXPECT_GE(rounded, 2);
}

TEST(SpreadFigure, SaysEveryLineOfTheSumAndItsTotal) {
  solver::JobResult result = made_up_result();
  result.hand = solver::spread_at_45_degrees(result.job);
  for (std::size_t i = 0; i < result.job.needles.size(); ++i) {
    const auto lettering = lettering_of(needle_spread(result, i));
    const auto says = [&](double newtons) {
      return std::any_of(lettering.begin(), lettering.end(), [&](const Lettering& text) {
        return text.text == fmt::format("{:.2f} kN", newtons / 1000.0);
      });
    };
    const auto number_at = [&](std::size_t number) {
      return std::count_if(lettering.begin(), lettering.end(), [&](const Lettering& text) {
        return text.text == std::to_string(number);
      });
    };
    const solver::SpreadSum& sum = result.hand.needles[i];
    EXPECT_TRUE(says(sum.total));
    for (std::size_t k = 0; k < sum.items.size(); ++k) {
      EXPECT_TRUE(says(sum.items[k].load)) << sum.items[k].name;
      EXPECT_GE(number_at(k + 1), 2) << sum.items[k].name << ": in the table and on the wall";
    }
  }
}

TEST(SpreadFigure, IsHalfAsWideAsAPageAndSoundForOddJobs) {
  solver::JobResult result = made_up_result();
  result.job = gable();
  result.job.needles[1].name = std::string(60, 'W');
  result.job.line_loads[0].name = "roof with its battens, tiles, felt, rafters, snow and a cat";
  result.hand = solver::spread_at_45_degrees(result.job);
  result.hand.needles[2].total = std::nan("");
  FigureList figures;
  for (std::size_t i = 0; i < result.job.needles.size(); ++i)
    figures.add(needle_spread(result, i), "spread", "what it carries");
  const auto drawn = figures.draw();
  for (const Figure& figure : drawn) EXPECT_LT(figure.drawing.size.width, 0.5 * page_width);
  expect_sound(drawn);
}

}  // namespace
}  // namespace deadshore::viz
