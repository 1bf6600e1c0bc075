// The examples in the headers of io/, as they stand there: `header_examples` compares the two.
#include "io/document/block.h"
#include "io/document/html.h"
#include "io/note/wording.h"
#include "solver/job/job.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace deadshore::io {
namespace {

using ::testing::HasSubstr;

Chapter lintels_chapter(const solver::Job& job) {
  Table lintels{
      "lintels", "What carries the wall over its openings", {"Lintel", numeric("Depth mm")}};
  for (const solver::Lintel& lintel : job.lintels) {
    lintels.add({lintel.shape.name, millimetres(lintel.shape.depth)});
  }
  Blocks rest = lintels;
  rest += Paragraph{"Elastic; see " + link_to("#wall", "the wall") + ".", Tone::small};
  if (job.lintels.empty()) rest += callout(Severity::warning, "None.", "Look again.");
  return {"lintels", "Lintels", Paragraph{"As given."}, rest};
}

TEST(HeaderExamples, BuildAChapter) {
  solver::Job job;
  EXPECT_THAT(html_of(lintels_chapter(job).rest).str(),
              HasSubstr("<strong>None.</strong> Look again."));
  solver::Lintel lintel;
  lintel.shape.name = "kitchen lintel";
  lintel.shape.depth = 215.0;
  job.lintels = {lintel};
  EXPECT_THAT(html_of(lintels_chapter(job).rest).str(),
              HasSubstr("<th scope=\"row\">kitchen lintel</th><td class=\"fig\">215</td>"));
}

}  // namespace
}  // namespace deadshore::io
