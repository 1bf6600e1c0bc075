#include "viz/page/canvas.h"

#include "png_facts.h"

#include <gtest/gtest.h>

namespace deadshore::viz {
namespace {

TEST(Text, TakesTheSizeItSays) {
  const TextStyle small{.size = 7.0};
  const TextStyle large{.size = 14.0};
  const Size one = text_size("Sturz über Tür", small);
  const Size two = text_size("Sturz über Tür", large);
  EXPECT_NEAR(two.width, 2.0 * one.width, 0.01 * two.width);
  EXPECT_NEAR(two.height, 2.0 * one.height, 0.02 * two.height);
}

TEST(Text, EndsInAnEllipsisOrWrapsAtItsWidth) {
  const std::string text = "a long name that does not fit into the room given to it";
  const Size line = text_size(text, {.size = 8.0});
  const Size cut = text_size(text, {.size = 8.0, .width = 60.0});
  const Size wrapped = text_size(text, {.size = 8.0, .width = 60.0, .overflow = Overflow::wrap});
  EXPECT_LE(cut.width, 60.0);
  EXPECT_NEAR(cut.height, line.height, 0.5);
  EXPECT_LE(wrapped.width, 60.0);
  EXPECT_GT(wrapped.height, 2.5 * line.height);
}

TEST(Text, DamagedLettersDoNotStopTheDrawing) {
  EXPECT_GT(text_size("wall \xff\xc3", {}).width, 0.0);
}

TEST(Png, HasTheWidthAskedForAndTheDrawingsShape) {
  const Drawing square{{100.0, 50.0}, [](Canvas& canvas) {
                         canvas.fill(Rect{50.0, 0.0, 100.0, 50.0}, ink);
                       }};
  const PngFacts facts = facts_of(to_png(square, 300));
  EXPECT_EQ(facts.width, 300);
  EXPECT_EQ(facts.height, 150);
  EXPECT_NEAR(facts.dark_share, 0.5, 0.01);
}

TEST(Svg, IsTheSameWhateverWasDrawnBefore) {
  const Drawing text{{100.0, 50.0}, [](Canvas& canvas) {
                       canvas.text({10.0, 10.0}, "N1", {}, {0.0, 0.0});
                     }};
  const std::string once = to_svg(text);
  (void)to_png(text, 50);
  EXPECT_EQ(to_svg(text), once);
}

TEST(Arrow, EndsAtItsTip) {
  const Drawing arrow{{100.0, 100.0}, [](Canvas& canvas) {
                        canvas.arrow({50.0, 90.0}, {50.0, 10.0}, {.width = 2.0});
                      }};
  const PngFacts facts = facts_of(to_png(arrow, 100));
  EXPECT_NEAR(facts.dark.top, 10.0, 1.5);
  EXPECT_NEAR(facts.dark.bottom, 90.0, 1.5);
}

}  // namespace
}  // namespace deadshore::viz
