#include "figure_facts.h"
#include "made_up_frame.h"
#include "made_up_job.h"
#include "made_up_stages.h"
#include "solver/job/needle_frame.h"
#include "viz/drawings.h"
#include "viz/page/figure_list.h"
#include "viz/plan/plan_view.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace deadshore::viz {
namespace {

using solver::JobResult;
using testing::Contains;
using testing::Field;
using testing::HasSubstr;

void expect_sound_plan(const JobResult& result) {
  FigureList figures;
  figures.add(plan(result), "plan", "from above");
  expect_sound(figures.draw());
}

/// A shore on four props, and the beam's way in from outside.
JobResult with_all_there_is() {
  JobResult result = made_up_staged_result();
  put_on_frame(result, made_up_frame("F1"));
  solver::ShoreFrame shore;
  shore.distance = 900.0;
  shore.x = {200.0, 5800.0};
  shore.head = solver::TimberMember{{100.0, 150.0}, {"C24"}};
  shore.uprights =
      solver::PropRow{made_up_frame("").props[0].prop, 140.0, {500.0, 2000.0, 4000.0, 5500.0}, 0.0};
  shore.footing = made_up_frame("").props[0].footing;
  result.job.dead_shores.front().frame = shore;
  solver::Lifting lifting;
  lifting.side = solver::PropSide::outside;
  lifting.pocket_left = lifting.pocket_right = 200.0;
  lifting.room_left = -300.0;
  lifting.room_right = 6300.0;
  solver::Lifter lifter;
  lifter.load_distance = 500.0;
  lifter.width = 500.0;
  solver::Stand stand;
  stand.width = 300.0;
  stand.depth = 500.0;
  for (const double at : {900.0, 2600.0}) {
    lifter.name = "L" + std::to_string(lifting.lifters.size() + 1);
    lifter.at = at;
    lifting.lifters.push_back(lifter);
    stand.name = "S" + std::to_string(lifting.stands.size() + 1);
    stand.at = at < 1000.0 ? 300.0 : 3200.0;
    lifting.stands.push_back(stand);
  }
  result.job.lifting = lifting;
  return result;
}

TEST(Plan, PutsPropsWhereTheFramesHaveThem) {
  JobResult result = made_up_result();
  put_on_frame(result, made_up_frame("F1"));
  const PlanParts parts = plan_parts(result);
  const solver::NeedleFrame& frame = result.job.needle_frames.front();
  ASSERT_EQ(parts.props.size(), result.job.needles.size() * frame.props.size());
  for (std::size_t i = 0; i < parts.props.size(); ++i) {
    const solver::Needle& needle = result.job.needles[i / frame.props.size()];
    const solver::NeedleProp& prop = frame.props[i % frame.props.size()];
    EXPECT_DOUBLE_EQ(parts.props[i].base.x.middle(), needle.x);
    EXPECT_DOUBLE_EQ(parts.props[i].base.z.middle(), solver::place_of(prop, result.job.thickness));
    EXPECT_DOUBLE_EQ(parts.props[i].base.x.length(), prop.footing.sole.prop_base);
  }
  for (const PlanNeedle& needle : parts.needles)
    EXPECT_NEAR(needle.box.z.length(), solver::length_of(frame, result.job.thickness), 1e-9);
}

TEST(Plan, SaysWhereSolesOverlap) {
  JobResult result = made_up_result();
  solver::NeedleFrame frame = made_up_frame("F1");
  for (solver::NeedleProp& prop : frame.props) prop.footing.sole.length = 1000.0;
  put_on_frame(result, frame);
  EXPECT_FALSE(plan_parts(result).soles_overlap);  // needles are 1100 apart
  result.job.needles[1].x -= 200.0;
  EXPECT_TRUE(plan_parts(result).soles_overlap);
}

TEST(Plan, OfAJobWithAllThereIsNamesIt) {
  const JobResult result = with_all_there_is();
  expect_sound_plan(result);
  const auto lettering = lettering_of(plan(result));
  for (const char* const text : {"N1", "N3", "S1", "S2", "L1", "L2", "outside", "inside", "900"})
    EXPECT_THAT(lettering, Contains(Field(&Lettering::text, text))) << text;
}

TEST(Plan, LeavesTheBeamAWayBetweenWallAndProps) {
  const JobResult result = with_all_there_is();
  const PlanWay way = plan_way(result.job);
  EXPECT_TRUE(way.bounded);
  EXPECT_DOUBLE_EQ(way.lane.z.to, -0.5 * result.job.thickness);
  for (const PlanProp& prop : plan_parts(result).props)
    EXPECT_FALSE(prop.base.z.from < way.lane.z.to && prop.base.z.to > way.lane.z.from);
}

TEST(Plan, WithoutFramesShowsWhatIsKnownAndNamesTheRest) {
  const JobResult result = made_up_result();
  expect_sound_plan(result);
  EXPECT_THAT(lettering_of(plan(result)),
              Contains(Field(&Lettering::text, HasSubstr("not given, so not drawn: N1, N2, N3"))));
  EXPECT_TRUE(plan_parts(result).props.empty());
}

TEST(Plan, OfCloseNeedlesWithLongNamesIsSound) {
  JobResult result = with_all_there_is();
  solver::Needle needle = result.job.needles.front();
  result.job.needles.clear();
  for (int i = 0; i < 9; ++i) {
    needle.name = "needle by the chimney breast " + std::to_string(i);
    needle.x = 1500.0 + 330.0 * i;
    result.job.needles.push_back(needle);
  }
  expect_sound_plan(result);
}

}  // namespace
}  // namespace deadshore::viz
