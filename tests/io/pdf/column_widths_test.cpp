#include "io/pdf/table_row.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <numeric>

namespace deadshore::io {
namespace {

using ::testing::DoubleEq;
using ::testing::ElementsAre;

double sum_of(const std::vector<double>& widths) {
  return std::accumulate(widths.begin(), widths.end(), 0.0);
}

// CSS 2.2, 17.5.2.2: a column is never narrower than its widest word while the words of all fit.
TEST(ColumnWidths, RoomLeftOverIsSharedInProportionToTheLines) {
  const std::vector<ColumnDemand> demands = {{10, 50, 50}, {20, 150, 150}};
  EXPECT_THAT(column_widths(demands, 400.0), ElementsAre(DoubleEq(100.0), DoubleEq(300.0)));
}

TEST(ColumnWidths, NoColumnIsNarrowerThanItsWordsWhileAllWordsFit) {
  const std::vector<ColumnDemand> demands = {{80, 900, 900}, {90, 500, 500}, {30, 40, 600}};
  const std::vector<double> widths = column_widths(demands, 300.0);
  for (std::size_t i = 0; i < demands.size(); ++i) EXPECT_GE(widths[i], demands[i].least) << i;
  EXPECT_DOUBLE_EQ(sum_of(widths), 300.0);
}

TEST(ColumnWidths, ANarrowColumnKeepsItsLinesWholeBesideAWideOne) {
  const std::vector<ColumnDemand> demands = {{30, 60, 60}, {40, 2000, 2000}};
  EXPECT_GE(column_widths(demands, 400.0)[0], 60.0);
}

TEST(ColumnWidths, TheWidestGiveWayWhereNotEvenTheWordsFit) {
  const std::vector<ColumnDemand> demands = {{20, 20, 20}, {500, 500, 500}, {900, 900, 900}};
  const std::vector<double> widths = column_widths(demands, 220.0);
  EXPECT_THAT(widths, ElementsAre(DoubleEq(20.0), DoubleEq(100.0), DoubleEq(100.0)));
}

TEST(ColumnWidths, EmptyColumnsShareTheWidth) {
  EXPECT_THAT(column_widths(std::vector<ColumnDemand>(2), 90.0),
              ElementsAre(DoubleEq(45.0), DoubleEq(45.0)));
}

}  // namespace
}  // namespace deadshore::io
