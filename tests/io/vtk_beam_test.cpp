#include "io/results/results_json.h"
#include "io/vtk/vtk_fields.h"
#include "io/vtk/vtk_writer.h"
#include "tests/io/made_up_result.h"
#include "tests/io/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <vtkCellArray.h>
#include <vtkDataArray.h>
#include <vtkFieldData.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPolyData.h>
#include <vtkSmartPointer.h>
#include <vtkStringArray.h>
#include <vtkXMLPolyDataReader.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace deadshore::io {
namespace {

namespace fs = std::filesystem;

vtkSmartPointer<vtkPolyData> read_beam(const fs::path& path) {
  const vtkNew<vtkXMLPolyDataReader> reader;
  reader->SetFileName(path.c_str());
  reader->Update();
  return reader->GetOutput();
}

std::string text_of(const fs::path& path) {
  std::ostringstream text;
  text << std::ifstream(path).rdbuf();
  return text.str();
}

std::string label_of(vtkPolyData* beam, const char* name) {
  auto* label = vtkStringArray::SafeDownCast(beam->GetFieldData()->GetAbstractArray(name));
  return label == nullptr ? "" : label->GetValue(0);
}

TEST(VtkBeam, EveryStageWithTheBeamHasItsLineWithTheForcesOfTheResultsFile) {
  const test::ScratchFolder scratch;
  const solver::JobResult result = test::made_up_staged_result();
  write_vtk(result, scratch.path());
  const auto answer = nlohmann::json::parse(results_json(result, {}));
  int count = 0;
  for (std::size_t time = 0; time < result.stages.size(); ++time) {
    const std::string name = result.stages[time].name;
    for (const char* model : {"uncracked", "cracked"}) {
      const fs::path file =
          scratch.path() / ("beam-0" + std::to_string(time) + "-" + name + "-" + model + ".vtp");
      const auto& analysis = answer.at("stages").at(time).at("analyses").at(model);
      ASSERT_EQ(fs::exists(file), analysis.contains("beam")) << file;
      if (!analysis.contains("beam")) continue;
      ++count;
      const auto beam = read_beam(file);
      EXPECT_EQ(label_of(beam, "stage"), name);
      EXPECT_EQ(label_of(beam, "model"), model);
      const auto& stations = analysis.at("beam").at("stations");
      ASSERT_EQ(beam->GetNumberOfLines(), 1);
      ASSERT_EQ(beam->GetNumberOfPoints(), static_cast<vtkIdType>(stations.at("x").size()));
      vtkPointData* data = beam->GetPointData();
      for (vtkIdType at = 0; at < beam->GetNumberOfPoints(); ++at) {
        EXPECT_DOUBLE_EQ(beam->GetPoint(at)[0], stations.at("x").at(at));
        for (const auto& [field, key] : {std::pair{"moment [kNm]", "moment"},
                                         {"shear [kN]", "shear"},
                                         {"deflection [mm]", "deflection"},
                                         {"load from packing [kN/m]", "packing"}}) {
          ASSERT_NE(data->GetArray(field), nullptr) << field;
          EXPECT_DOUBLE_EQ(data->GetArray(field)->GetTuple1(at), stations.at(key).at(at)) << field;
        }
        EXPECT_EQ(data->GetVectors()->GetTuple3(at)[1],
                  -data->GetArray("deflection [mm]")->GetTuple1(at));
      }
    }
  }
  EXPECT_EQ(count, 4);  // packed and finished, both models
}

// 203.2 mm deep, under 25 mm of packing under the soffit at 1500 mm.
TEST(VtkBeam, LiesAtTheBeamsMiddle) {
  const test::ScratchFolder scratch;
  write_vtk(test::made_up_staged_result(), scratch.path());
  const auto beam = read_beam(scratch.path() / "beam-03-packed-cracked.vtp");
  EXPECT_DOUBLE_EQ(beam->GetPoint(0)[1], 1475.0 - 101.6);
  EXPECT_DOUBLE_EQ(beam->GetPoint(0)[2], 0.0);
}

TEST(VtkBeam, StagesAreTimeStepsAsInTheWallsCollection) {
  const test::ScratchFolder scratch;
  write_vtk(test::made_up_staged_result(), scratch.path());
  const std::string list = text_of(scratch.path() / "beam.pvd");
  for (const char* part : {R"(timestep="3" part="0" file="beam-03-packed-uncracked.vtp")",
                           R"(timestep="4" part="1" file="beam-04-finished-cracked.vtp")"}) {
    EXPECT_THAT(list, ::testing::HasSubstr(part));
  }
}

TEST(VtkBeam, WithoutABeamThereIsNoFileOfIt) {
  const test::ScratchFolder scratch;
  write_vtk(test::made_up_result(), scratch.path());
  for (const auto& entry : fs::directory_iterator(scratch.path())) {
    EXPECT_FALSE(entry.path().filename().string().starts_with("beam")) << entry.path();
  }
}

TEST(VtkBeam, TheReadmeNamesItsFieldsAndNoOther) {
  const test::ScratchFolder scratch;
  write_vtk(test::made_up_staged_result(), scratch.path());
  const auto beam = read_beam(scratch.path() / "beam-03-packed-cracked.vtp");
  const std::string readme = vtk_readme();
  const std::string section = readme.substr(readme.find("\nbeam-*.vtp\n"));
  EXPECT_THAT(readme, ::testing::HasSubstr("\nbeam.pvd\n"));
  std::size_t written = 0;
  for (vtkFieldData* fields :
       {static_cast<vtkFieldData*>(beam->GetPointData()), beam->GetFieldData()}) {
    for (int i = 0; i < fields->GetNumberOfArrays(); ++i) {
      const std::string name = fields->GetAbstractArray(i)->GetName();
      EXPECT_THAT(section, ::testing::HasSubstr("\n  " + name + " (")) << name;
      ++written;
    }
  }
  EXPECT_EQ(written, beam_fields().size());
}

TEST(VtkWall, CarriesItsThickness) {
  const test::ScratchFolder scratch;
  write_vtk(test::made_up_staged_result(), scratch.path());
  EXPECT_THAT(text_of(scratch.path() / "wall-02-cut-cracked.vtu"),
              ::testing::HasSubstr("Name=\"thickness [mm]\""));
}

}  // namespace
}  // namespace deadshore::io
