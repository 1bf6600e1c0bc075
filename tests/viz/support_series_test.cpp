#include "viz/stages/support_series.h"

#include "made_up_job.h"
#include "made_up_stages.h"
#include "solver/panel/support_reactions.h"
#include "tests/some.h"

#include <gtest/gtest.h>

#include <cmath>

namespace deadshore::viz {
namespace {

using solver::MasonryModel;

const SupportSeries* find(const std::vector<SupportSeries>& all, const std::string& name) {
  for (const SupportSeries& series : all)
    if (series.name == name) return &series;
  return nullptr;
}

TEST(SupportSeries, HasValuesOnlyWhereTheSupportIsThere) {
  const auto result = made_up_staged_result();
  const auto all = support_series(result, MasonryModel::uncracked);
  const SupportSeries* first = find(all, "N1");
  ASSERT_NE(first, nullptr);
  EXPECT_TRUE(std::isnan(first->values[1]));  // not in yet
  EXPECT_DOUBLE_EQ(first->values[4], result.stages[4].analyses[0].needles[0].force / 1000.0);
  EXPECT_TRUE(std::isnan(first->values[7]));  // released
  const SupportSeries* cut = find(all, "base under the cut");
  ASSERT_NE(cut, nullptr);
  EXPECT_DOUBLE_EQ(cut->values[3], 62.0);
  EXPECT_TRUE(std::isnan(cut->values[4]));
  const SupportSeries* beam = find(all, "beam left end");
  ASSERT_NE(beam, nullptr);
  EXPECT_TRUE(std::isnan(beam->values[4]));
  EXPECT_GT(beam->values[8], beam->values[6]);
}

TEST(SupportSeries, LeavesOutAStageThatDoesNotStand) {
  auto result = made_up_staged_result();
  result.stages[4].analyses[1].no_equilibrium = "nothing holds it";
  for (const SupportSeries& series : support_series(result, MasonryModel::cracked))
    EXPECT_TRUE(std::isnan(series.values[4])) << series.name;
  const auto uncracked = support_series(result, MasonryModel::uncracked);
  ASSERT_NE(find(uncracked, "N1"), nullptr);
  EXPECT_TRUE(std::isfinite(find(uncracked, "N1")->values[4]));
}

TEST(SupportSeries, WithoutAnOrderOfWorkHasPiersAndNeedlesAlone) {
  for (const SupportSeries& series : some(support_series(made_up_result(), MasonryModel::cracked)))
    EXPECT_TRUE(series.support.kind == solver::SupportKind::needle ||
                solver::group_of(series.support.kind) == solver::SupportGroup::bases)
        << series.name;
}

}  // namespace
}  // namespace deadshore::viz
