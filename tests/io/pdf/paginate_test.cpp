#include "io/pdf/pages.h"
#include "io/pdf/paper.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace deadshore::io {
namespace {

using ::testing::ElementsAre;

/// A tenth of a page.
constexpr double tenth = 0.1 * paper::text_height;

Strip strip(double height, Join join = Join::free) {
  Strip made;
  made.height = height;
  made.join = join;
  return made;
}

/// The strips of each page by their place in the column; those of a head are -1.
std::vector<std::vector<int>> placed(const Flow& flow) {
  std::vector<std::vector<int>> pages;
  for (const NotePage& page : paginate(flow)) {
    std::vector<int>& strips = pages.emplace_back();
    for (const PlacedStrip& at : page.strips) {
      const bool in_column =
          at.strip >= flow.strips.data() && at.strip < flow.strips.data() + flow.strips.size();
      strips.push_back(in_column ? static_cast<int>(at.strip - flow.strips.data()) : -1);
    }
  }
  return pages;
}

TEST(Paginate, APageIsFilledBeforeTheNext) {
  Flow flow;
  flow.strips.assign(12, strip(tenth));
  EXPECT_THAT(placed(flow),
              ElementsAre(ElementsAre(0, 1, 2, 3, 4, 5, 6, 7, 8, 9), ElementsAre(10, 11)));
}

TEST(Paginate, ABoundStripTakesTheOneAboveAlong) {
  Flow flow;
  flow.strips.assign(11, strip(tenth));
  flow.strips[9].join = flow.strips[10].join = Join::bound;
  EXPECT_EQ(placed(flow)[1], (std::vector{8, 9, 10}));
}

TEST(Paginate, WhatIsBoundAndTallerThanAPageIsCutAllTheSame) {
  Flow flow;
  flow.strips.assign(25, strip(tenth, Join::bound));
  const auto pages = placed(flow);
  ASSERT_EQ(pages.size(), 3U);
  EXPECT_EQ(pages[0].size() + pages[1].size() + pages[2].size(), 25U);
}

TEST(Paginate, AStripTallerThanAPageStandsAlone) {
  Flow flow;
  flow.strips = {strip(tenth), strip(20 * tenth), strip(tenth)};
  EXPECT_THAT(placed(flow), ElementsAre(ElementsAre(0), ElementsAre(1), ElementsAre(2)));
}

TEST(Paginate, SpaceAboveAStripIsLeftOutAtTheTopOfAPage) {
  Flow flow;
  flow.strips.assign(11, strip(tenth));
  flow.strips[10].space = 2 * tenth;
  const std::vector<NotePage> pages = paginate(flow);
  ASSERT_EQ(pages.size(), 2U);
  EXPECT_EQ(pages[1].strips.front().top, 0.0);
}

TEST(Paginate, AHeadComesAgainOnEveryPageItsRowsRunOnTo) {
  Flow flow;
  flow.heads.push_back({strip(tenth)});
  flow.strips.assign(20, strip(tenth));
  for (Strip& row : flow.strips) row.head = 0;
  flow.strips.front().head = no_head;  // the head itself
  const auto pages = placed(flow);
  EXPECT_EQ(pages[0].front(), 0);
  EXPECT_EQ(pages[1].front(), -1);
  EXPECT_EQ(pages[1].size(), 10U);
  EXPECT_EQ(pages[2].front(), -1);
}

TEST(Paginate, TextRunsOnWhereAFigureDoesNotFitAndTheFigureStandsOnTheNextPage) {
  Flow flow;
  flow.strips.assign(14, strip(tenth));
  flow.strips[7] = strip(4 * tenth);
  flow.strips[7].floats = 2;  // with its caption
  flow.strips[8].join = Join::bound;
  EXPECT_THAT(placed(flow),
              ElementsAre(ElementsAre(0, 1, 2, 3, 4, 5, 6, 9, 10, 11), ElementsAre(7, 8, 12, 13)));
}

TEST(Paginate, AFigureDoesNotLeaveItsChapter) {
  Flow flow;
  flow.strips.assign(10, strip(tenth));
  flow.strips[7] = strip(4 * tenth);
  flow.strips[7].floats = 1;
  flow.strips[8].opens_chapter = true;
  EXPECT_THAT(placed(flow), ElementsAre(ElementsAre(0, 1, 2, 3, 4, 5, 6), ElementsAre(7, 8, 9)));
}

TEST(Paginate, AWideFigureTakesAPageThatLiesAndTheTextRunsOn) {
  Flow flow;
  flow.strips.assign(12, strip(tenth));
  flow.strips[2].landscape = true;
  flow.strips[2].floats = 1;
  const std::vector<NotePage> pages = paginate(flow);
  ASSERT_EQ(pages.size(), 3U);
  EXPECT_EQ(pages[0].strips.size(), 10U);
  EXPECT_TRUE(pages[1].landscape);
  EXPECT_EQ(pages[1].strips.size(), 1U);
  EXPECT_FALSE(pages[2].landscape);
}

TEST(Paginate, FiguresKeepTheirOrder) {
  Flow flow;
  flow.strips = {strip(8 * tenth), strip(5 * tenth), strip(tenth), strip(tenth)};
  flow.strips[1].floats = flow.strips[2].floats = 1;
  EXPECT_THAT(placed(flow), ElementsAre(ElementsAre(0, 3), ElementsAre(1, 2)));
}

}  // namespace
}  // namespace deadshore::io
