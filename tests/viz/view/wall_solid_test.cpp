#include "tests/viz/view/shown_folder.h"
#include "viz/view/folded.h"
#include "viz/view/point_values.h"
#include "viz/view/shown_result.h"
#include "viz/view/solids.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <vtkCellData.h>
#include <vtkDataArray.h>
#include <vtkMassProperties.h>
#include <vtkNew.h>
#include <vtkTriangleFilter.h>

#include <array>
#include <cmath>
#include <string>
#include <vector>

namespace deadshore::viz {
namespace {

double volume_of(vtkPolyData* surface) {
  const vtkNew<vtkTriangleFilter> triangles;
  triangles->SetInputData(surface);
  const vtkNew<vtkMassProperties> mass;
  mass->SetInputConnection(triangles->GetOutputPort());
  mass->Update();
  return mass->GetVolume();
}

class WallSolid : public ::testing::Test {
 protected:
  test::ShownFolder folder;
  ShownResult result = read_result(folder.path());
};

// By the divergence theorem over closed faces: 4 m x 3 m less a window of 0.5 m x 0.5 m, and less
// the cut of 2 m x 1.5 m, 250 mm thick.
TEST_F(WallSolid, ClosesRoundTheMasonryThatIsThere) {
  EXPECT_NEAR(volume_of(wall_solid(result.wall(1, 0).grid, 250.0, 0.0)), 11.75e6 * 250.0, 1.0);
  EXPECT_NEAR(volume_of(wall_solid(result.wall(2, 0).grid, 250.0, 0.0)), 8.75e6 * 250.0, 1.0);
}

// The made-up movement is a stretch by 1e-4 along and a squash by 5e-4 up.
TEST_F(WallSolid, GrowsByTheMagnifiedMovement) {
  const double built = volume_of(wall_solid(result.wall(2, 0).grid, 250.0, 0.0));
  const double drawn = volume_of(wall_solid(result.wall(2, 0).grid, 250.0, 100.0));
  EXPECT_NEAR(drawn / built, 1.01 * 0.95, 1e-9);
}

TEST_F(WallSolid, EveryFaceKnowsItsElement) {
  vtkUnstructuredGrid* grid = result.wall(2, 0).grid;
  const auto solid = wall_solid(grid, 250.0, 0.0);
  vtkDataArray* element = solid->GetCellData()->GetArray("element");
  vtkDataArray* loose = solid->GetCellData()->GetArray("loose");
  ASSERT_TRUE(element != nullptr && loose != nullptr);
  ASSERT_EQ(element->GetNumberOfTuples(), solid->GetNumberOfCells());
  for (vtkIdType face = 0; face < solid->GetNumberOfCells(); ++face) {
    const auto cell = static_cast<vtkIdType>(element->GetTuple1(face));
    EXPECT_EQ(loose->GetTuple1(face), grid->GetCellData()->GetArray("loose")->GetTuple1(cell));
    std::array<double, 6> of_face{};
    std::array<double, 6> of_cell{};
    solid->GetCellBounds(face, of_face.data());
    grid->GetCellBounds(cell, of_cell.data());
    EXPECT_GE(of_face[0], of_cell[0]);
    EXPECT_LE(of_face[1], of_cell[1]);
  }
}

TEST_F(WallSolid, LooseElementsHaveACrossOnEitherFace) {
  EXPECT_EQ(loose_crosses(result.wall(2, 1).grid, 250.0, 0.0)->GetNumberOfLines(), 0);
  const test::ShownFolder at_once(io::test::made_up_result());
  const ShownResult other = read_result(at_once.path());
  EXPECT_EQ(loose_crosses(other.wall(0, 1).grid, 250.0, 0.0)->GetNumberOfLines(), 4);
}

TEST_F(WallSolid, APlaceThatWasMovedIsFoundAgainAsBuilt) {
  vtkUnstructuredGrid* grid = result.wall(2, 0).grid;
  const auto place = place_at(grid, 3210.0, 2345.0);
  ASSERT_TRUE(place.has_value());
  const std::array<double, 2> moved = movement_at(grid, *place);
  EXPECT_NEAR(moved[0], 0.321, 1e-9);
  EXPECT_NEAR(moved[1], -1.1725, 1e-9);
  const auto again =
      place_in_cell(grid, place->cell, 3210.0 + 100.0 * moved[0], 2345.0 + 100.0 * moved[1], 100.0);
  EXPECT_NEAR(as_built(grid, again)[0], 3210.0, 1e-6);
  EXPECT_NEAR(as_built(grid, again)[1], 2345.0, 1e-6);
}

TEST_F(WallSolid, TheBeamIsThereOnceItIsPlacedAndSags) {
  EXPECT_EQ(beam_solid(result, result.wall(2, 1), 0.0), nullptr);
  const auto straight = beam_solid(result, result.wall(4, 1), 0.0);
  ASSERT_NE(straight, nullptr);
  const double* bounds = straight->GetBounds();
  EXPECT_NEAR(bounds[3] - bounds[2], 203.2, 1e-9);
  const double top = bounds[3];
  // 2.5 mm of sag in the middle of 2200 mm, less what the middles of the bearings, 25 mm in, go
  // down by; they go down with the wall under them, 5e-4 times their height.
  const auto bent = beam_solid(result, result.wall(4, 1), 10.0);
  const double lowest = bent->GetBounds()[2];
  const double under = top - 203.2 - 1.0;
  EXPECT_NEAR(lowest, top - 203.2 - 10.0 * (2.5 * (1.0 - 25.0 / 1100.0) + 5e-4 * under), 1e-6);
}

TEST(Folded, BreaksBetweenWordsAndKeepsEveryLetter) {
  const std::vector<std::string> narrow =
      folded({"one two three four", "      indented words go on", "unbreakably-long-word"}, 12);
  for (const std::string& line : narrow) EXPECT_LE(line.size(), 12U) << line;
  EXPECT_EQ(narrow.front(), "one two");
  std::string letters;
  for (const std::string& line : narrow) {
    for (const char c : line) {
      if (c != ' ') letters += c;
    }
  }
  EXPECT_EQ(letters, "onetwothreefourindentedwordsgoonunbreakably-long-word");
}

TEST(Folded, NeverBreaksACharacterOfManyBytes) {
  for (const std::string& line : folded({"\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9"}, 5)) {
    EXPECT_EQ(line.find_first_not_of(' ') == std::string::npos ? 0U : line.size() % 2, 0U) << line;
  }
}

}  // namespace
}  // namespace deadshore::viz
