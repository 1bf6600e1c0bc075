// The examples in the headers of viz/, as they stand there: `header_examples` compares the two.
#include "viz/page/canvas.h"

#include <fmt/core.h>
#include <gtest/gtest.h>

#include <string>

namespace deadshore::viz {
namespace {

TEST(HeaderExamples, DrawASketch) {
  testing::internal::CaptureStdout();
  const Drawing sketch{{200.0, 60.0}, [](Canvas& canvas) {
                         canvas.outline(Rect{20.0, 5.0, 180.0, 40.0}, Pen{.width = 1.2});
                         canvas.arrow({100.0, 58.0}, {100.0, 41.0}, Pen{});
                         canvas.text({104.0, 50.0}, "21.3 kN", TextStyle{}, Anchor{0.0, 0.5});
                       }};
  const std::string svg = to_svg(sketch);
  for (const Lettering& text : lettering_of(sketch)) {
    fmt::print("{}, {} points, in {}\n", text.text, text.size, svg.substr(0, 5));
  }
  EXPECT_EQ(testing::internal::GetCapturedStdout(), "21.3 kN, 7.5 points, in <?xml\n");
}

}  // namespace
}  // namespace deadshore::viz
