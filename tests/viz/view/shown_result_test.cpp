#include "viz/view/shown_result.h"

#include "tests/viz/view/shown_folder.h"
#include "viz/view/view_error.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <vtkCellData.h>
#include <vtkDataArray.h>

#include <cstring>
#include <functional>
#include <limits>
#include <string>

namespace deadshore::viz {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;

/// What is said of a folder; empty where it is read.
std::string complaint_about(const test::ShownFolder& folder) {
  try {
    (void)read_result(folder.path());
  } catch (const ViewError& error) {
    return error.what();
  }
  return "";
}

TEST(ShownResult, HasEveryStageAndAnalysisOfTheFolder) {
  const test::ShownFolder folder;
  const ShownResult result = read_result(folder.path());
  EXPECT_THAT(result.stages,
              ::testing::ElementsAre("as built", "needles in", "cut", "packed", "finished"));
  EXPECT_THAT(result.analyses, ::testing::ElementsAre("uncracked", "cracked"));
  EXPECT_EQ(result.walls.size(), 10U);
  EXPECT_EQ(result.thickness, 250.0);
  // What is cut out is not there: 12 elements of 500 mm.
  EXPECT_EQ(result.wall(1, 0).grid->GetNumberOfCells() - result.wall(2, 0).grid->GetNumberOfCells(),
            12);
  EXPECT_EQ(result.wall(2, 1).beam, nullptr);
  EXPECT_NE(result.wall(3, 1).beam, nullptr);
  EXPECT_NE(result.needles, nullptr);
}

TEST(ShownResult, AJobWorkedOutAtOnceHasOneStageAndNoNeedleFrames) {
  const test::ShownFolder folder(io::test::made_up_result());
  const ShownResult result = read_result(folder.path());
  EXPECT_THAT(result.stages, ::testing::ElementsAre("cut"));
  EXPECT_EQ(result.needles, nullptr);
}

TEST(ShownResult, AWallThatDoesNotStandIsReadWithItsReason) {
  const test::ShownFolder folder(io::test::made_up_result_that_falls("it spreads"));
  EXPECT_EQ(read_result(folder.path()).wall(0, 1).no_equilibrium, "it spreads");
}

TEST(ShownResult, AFileThatIsMissingIsNamed) {
  for (const char* name : {"results.json", "wall.pvd", "supports.vtp", "wall-02-cut-cracked.vtu",
                           "beam-03-packed-cracked.vtp"}) {
    const test::ShownFolder folder;
    std::filesystem::remove(folder.path() / name);
    EXPECT_THAT(complaint_about(folder), AllOf(HasSubstr(name), HasSubstr("no such file")));
  }
}

TEST(ShownResult, AFileThatIsCutShortIsNamed) {
  for (const char* name : {"results.json", "wall.pvd", "supports.vtp", "needles.vtp",
                           "wall-02-cut-cracked.vtu", "beam-03-packed-cracked.vtp"}) {
    for (const double part : {0.0, 0.3, 0.6, 0.9, 0.97}) {
      const test::ShownFolder folder;
      const std::string whole = folder.bytes_of(name);
      folder.put(name, whole.substr(0, static_cast<std::size_t>(part * whole.size())));
      const std::string complaint = complaint_about(folder);
      EXPECT_THAT(complaint, HasSubstr(name)) << part;
      EXPECT_EQ(complaint.find('\n'), std::string::npos);
    }
  }
}

TEST(ShownResult, AnythingElseInAFilesPlaceIsNamed) {
  for (const char* name : {"results.json", "wall.pvd", "supports.vtp", "wall-02-cut-cracked.vtu"}) {
    const test::ShownFolder folder;
    folder.put(name, "<VTKFile type=\"ImageData\"></VTKFile>\n[1, 2]");
    EXPECT_THAT(complaint_about(folder), HasSubstr(name));
  }
}

TEST(ShownResult, ValuesThatAreNoNumbersAreNamedWithTheirField) {
  solver::JobResult result = test::ShownFolder::staged_on_frames();
  result.stages[2].analyses[0].fields.node_stress[0].yy = std::numeric_limits<double>::quiet_NaN();
  const test::ShownFolder folder(result);
  EXPECT_THAT(complaint_about(folder), AllOf(HasSubstr("wall-02-cut-uncracked.vtu"),
                                             HasSubstr("stress"), HasSubstr("no number")));
  result = test::ShownFolder::staged_on_frames();
  result.stages[2].analyses[1].fields.displacement[4] = std::numeric_limits<double>::infinity();
  EXPECT_THAT(complaint_about(test::ShownFolder(result)), HasSubstr("displacement [mm]"));
}

TEST(ShownResult, FilesOfAnotherJobDoNotGoTogether) {
  const test::ShownFolder folder;
  std::string answers = folder.bytes_of("results.json");
  const std::string name = "\"name\": \"cut\"";
  answers.replace(answers.find(name), name.size(), "\"name\": \"hole\"");
  folder.put("results.json", answers);
  EXPECT_THAT(complaint_about(folder), HasSubstr("wall-02-cut-uncracked.vtu"));
}

TEST(ShownResult, ACollectionMayNotLeadOutOfItsFolder) {
  const test::ShownFolder folder;
  std::string list = folder.bytes_of("wall.pvd");
  const std::string file = "wall-02-cut-cracked.vtu";
  list.replace(list.find(file), file.size(), "../../etc/passwd");
  folder.put("wall.pvd", list);
  EXPECT_THAT(complaint_about(folder), HasSubstr("wall.pvd"));
}

}  // namespace
}  // namespace deadshore::viz
