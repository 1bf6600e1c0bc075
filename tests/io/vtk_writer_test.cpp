#include "io/vtk/vtk_writer.h"

#include "io/error.h"
#include "io/results/results_json.h"
#include "io/vtk/vtk_fields.h"
#include "tests/io/made_up_result.h"
#include "tests/io/scratch_folder.h"
#include "tests/viz/made_up_frame.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <vtkCellData.h>
#include <vtkCellType.h>
#include <vtkDataArray.h>
#include <vtkFieldData.h>
#include <vtkIdList.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPolyData.h>
#include <vtkSmartPointer.h>
#include <vtkStringArray.h>
#include <vtkUnstructuredGrid.h>
#include <vtkXMLDataElement.h>
#include <vtkXMLPolyDataReader.h>
#include <vtkXMLUnstructuredGridReader.h>
#include <vtkXMLUtilities.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <initializer_list>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

namespace fs = std::filesystem;

vtkSmartPointer<vtkUnstructuredGrid> read_grid(const fs::path& path) {
  vtkNew<vtkXMLUnstructuredGridReader> reader;
  reader->SetFileName(path.c_str());
  reader->Update();
  return reader->GetOutput();
}

vtkSmartPointer<vtkPolyData> read_shapes(const fs::path& path) {
  vtkNew<vtkXMLPolyDataReader> reader;
  reader->SetFileName(path.c_str());
  reader->Update();
  return reader->GetOutput();
}

vtkSmartPointer<vtkPolyData> read_supports(const fs::path& folder) {
  return read_shapes(folder / "supports.vtp");
}

struct DataSet {
  std::string time;
  std::string part;
  std::string file;
};

std::vector<DataSet> data_sets_in(const fs::path& path) {
  const vtkSmartPointer<vtkXMLDataElement> root =
      vtkSmartPointer<vtkXMLDataElement>::Take(vtkXMLUtilities::ReadElementFromFile(path.c_str()));
  vtkXMLDataElement* collection = root->FindNestedElementWithName("Collection");
  std::vector<DataSet> sets;
  for (int index = 0; index < collection->GetNumberOfNestedElements(); ++index) {
    vtkXMLDataElement* set = collection->GetNestedElement(index);
    sets.push_back(
        {set->GetAttribute("timestep"), set->GetAttribute("part"), set->GetAttribute("file")});
  }
  return sets;
}

std::vector<std::string> files_in_collection(const fs::path& path) {
  std::vector<std::string> files;
  for (const DataSet& set : data_sets_in(path)) files.push_back(set.file);
  return files;
}

TEST(VtkWriter, TheCollectionListsOneFileForEachAnalysis) {
  const test::ScratchFolder scratch;
  write_vtk(test::made_up_result(), scratch.path());
  const std::vector<std::string> files = files_in_collection(scratch.path() / "wall.pvd");
  EXPECT_THAT(files, ::testing::ElementsAre("wall-cut-uncracked.vtu", "wall-cut-cracked.vtu"));
  for (const std::string& file : files) EXPECT_TRUE(fs::exists(scratch.path() / file)) << file;
}

TEST(VtkWriter, WhatIsReadBackIsWhatWasFound) {
  const test::ScratchFolder scratch;
  const solver::JobResult result = test::made_up_result();
  write_vtk(result, scratch.path());
  const auto grid = read_grid(scratch.path() / "wall-cut-cracked.vtu");
  const mesh::QuadMesh& mesh = result.mesh.quads;
  const solver::PanelFields& fields = result.stages.front().analyses.back().fields;

  ASSERT_EQ(grid->GetNumberOfPoints(), mesh.node_count());
  ASSERT_EQ(grid->GetNumberOfCells(), mesh.quad_count());
  vtkDataArray* displacement = grid->GetPointData()->GetArray("displacement [mm]");
  vtkDataArray* stress = grid->GetPointData()->GetArray("stress [N/mm2]");
  ASSERT_TRUE(displacement != nullptr && stress != nullptr);
  EXPECT_STREQ(stress->GetComponentName(2), "xy");
  for (int node = 0; node < mesh.node_count(); ++node) {
    EXPECT_EQ(grid->GetPoint(node)[0], mesh.nodes[node].x);
    EXPECT_EQ(grid->GetPoint(node)[1], mesh.nodes[node].y);
    EXPECT_EQ(displacement->GetTuple3(node)[1], fields.displacement[2 * node + 1]);
    EXPECT_EQ(stress->GetTuple3(node)[1], fields.node_stress[node].yy);
  }
  vtkDataArray* loose = grid->GetCellData()->GetArray("loose");
  vtkDataArray* crack = grid->GetCellData()->GetArray("largest crack strain");
  auto* material = vtkStringArray::SafeDownCast(grid->GetCellData()->GetAbstractArray("material"));
  ASSERT_TRUE(loose != nullptr && crack != nullptr && material != nullptr);
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    EXPECT_EQ(grid->GetCellType(quad), VTK_QUAD);
    EXPECT_EQ(loose->GetTuple1(quad), fields.quad_loose[quad]);
    EXPECT_NEAR(crack->GetTuple1(quad), fields.quad_crack_strain[quad].xx, 1e-15);
    EXPECT_EQ(material->GetValue(quad),
              mesh.region_of_quad[quad] == 0 ? "soft brick" : "window lintel");
  }
}

// The spectral theorem: sum over the principal values s of s d (x) d is the tensor itself.
TEST(VtkWriter, PrincipalStressesAndDirectionsMakeUpTheStress) {
  const test::ScratchFolder scratch;
  write_vtk(test::made_up_result(), scratch.path());
  const auto grid = read_grid(scratch.path() / "wall-cut-uncracked.vtu");
  vtkPointData* data = grid->GetPointData();
  for (vtkIdType node = 0; node < grid->GetNumberOfPoints(); ++node) {
    const double major = data->GetArray("principal stress, major [N/mm2]")->GetTuple1(node);
    const double minor = data->GetArray("principal stress, minor [N/mm2]")->GetTuple1(node);
    const double* along = data->GetArray("direction of major")->GetTuple3(node);
    const double ax = along[0];
    const double ay = along[1];
    const double* across = data->GetArray("direction of minor")->GetTuple3(node);
    const double* stress = data->GetArray("stress [N/mm2]")->GetTuple3(node);
    EXPECT_NEAR(major * ax * ax + minor * across[0] * across[0], stress[0], 1e-12);
    EXPECT_NEAR(major * ay * ay + minor * across[1] * across[1], stress[1], 1e-12);
    EXPECT_NEAR(major * ax * ay + minor * across[0] * across[1], stress[2], 1e-12);
  }
}

TEST(VtkWriter, EightNodeElementsAreWrittenAsQuadraticQuads) {
  const test::ScratchFolder scratch;
  solver::JobResult result = test::made_up_result();
  result.mesh.quads = mesh::with_midside_nodes(result.mesh.quads);
  result.stages.front().analyses.resize(1);
  solver::PanelFields& fields = result.stages.front().analyses.front().fields;
  fields.displacement.resize(2 * result.mesh.quads.nodes.size());
  fields.node_stress.resize(result.mesh.quads.nodes.size());
  write_vtk(result, scratch.path());

  const auto grid = read_grid(scratch.path() / "wall-cut-uncracked.vtu");
  EXPECT_EQ(grid->GetCellType(0), VTK_QUADRATIC_QUAD);
  // Mid-side 0 lies between corners 0 and 1.
  vtkIdType count = 0;
  const vtkIdType* ids = nullptr;
  grid->GetCellPoints(0, count, ids);
  ASSERT_EQ(count, 8);
  EXPECT_EQ(grid->GetPoint(ids[4])[0], 250.0);
  EXPECT_EQ(grid->GetPoint(ids[4])[1], 0.0);
}

TEST(VtkWriter, SupportsCarryTheirReactionsInKilonewtons) {
  const test::ScratchFolder scratch;
  write_vtk(test::made_up_result(), scratch.path());
  const auto points = read_supports(scratch.path());

  auto* names = vtkStringArray::SafeDownCast(points->GetPointData()->GetAbstractArray("name"));
  vtkDataArray* cracked = points->GetPointData()->GetArray("reaction cut cracked [kN]");
  ASSERT_TRUE(names != nullptr && cracked != nullptr);
  ASSERT_EQ(points->GetNumberOfPoints(), 5);
  EXPECT_EQ(names->GetValue(1), "N2");
  EXPECT_EQ(points->GetPoint(1)[0], 2500.0);
  EXPECT_EQ(points->GetPoint(1)[1], 1500.0);
  EXPECT_DOUBLE_EQ(cracked->GetTuple3(1)[1], 26.05);
  EXPECT_EQ(names->GetValue(3), "right pier");
  EXPECT_DOUBLE_EQ(cracked->GetTuple3(3)[1], 26.0);
  // A held right end pushes the wall to the left.
  EXPECT_EQ(names->GetValue(4), "right end");
  EXPECT_DOUBLE_EQ(cracked->GetTuple3(4)[0], -5.25);
}

TEST(VtkWriter, AWallThatFallsHasItsLooseMasonryButNoStress) {
  const test::ScratchFolder scratch;
  write_vtk(test::made_up_result_that_falls("it spreads"), scratch.path());
  const auto grid = read_grid(scratch.path() / "wall-cut-cracked.vtu");
  EXPECT_NE(grid->GetCellData()->GetArray("loose"), nullptr);
  EXPECT_EQ(grid->GetPointData()->GetNumberOfArrays(), 0);
  EXPECT_EQ(grid->GetCellData()->GetArray("mean stress [N/mm2]"), nullptr);
}

TEST(VtkWriter, StagesAreTimeStepsAndModelsTheirParts) {
  const test::ScratchFolder scratch;
  const solver::JobResult result = test::made_up_staged_result();
  write_vtk(result, scratch.path());
  const std::vector<DataSet> sets = data_sets_in(scratch.path() / "wall.pvd");
  ASSERT_EQ(sets.size(), 10U);
  EXPECT_EQ(sets[2].file, "wall-02-cut-uncracked.vtu");
  EXPECT_EQ(sets[2].time, "2");
  EXPECT_EQ(sets[2].part, "0");
  EXPECT_EQ(sets[7].file, "wall-02-cut-cracked.vtu");
  EXPECT_EQ(sets[7].time, "2");
  EXPECT_EQ(sets[7].part, "1");
  for (const DataSet& set : sets) {
    const auto grid = read_grid(scratch.path() / set.file);
    const auto& stage = result.stages.at(std::stoul(set.time));
    ASSERT_NE(grid->GetFieldData()->GetArray("day"), nullptr) << set.file;
    EXPECT_EQ(grid->GetFieldData()->GetArray("day")->GetTuple1(0), stage.day) << set.file;
  }
}

TEST(VtkWriter, WhatIsTakenOutIsLeftOutWithItsNodes) {
  const test::ScratchFolder scratch;
  const solver::JobResult result = test::made_up_staged_result();
  write_vtk(result, scratch.path());
  const auto before = read_grid(scratch.path() / "wall-01-needles-in-cracked.vtu");
  const auto after = read_grid(scratch.path() / "wall-02-cut-cracked.vtu");
  EXPECT_EQ(before->GetNumberOfCells(), result.mesh.quads.quad_count());
  EXPECT_EQ(before->GetNumberOfPoints(), result.mesh.quads.node_count());
  EXPECT_EQ(after->GetNumberOfCells(), before->GetNumberOfCells() - 12);  // 4 by 3 are cut out
  // The cut is 2 m wide and 1.5 m high: 3 columns of nodes inside it, 3 rows from the base up.
  EXPECT_EQ(after->GetNumberOfPoints(), before->GetNumberOfPoints() - 9);
  vtkDataArray* displacement = after->GetPointData()->GetArray("displacement [mm]");
  vtkDataArray* mechanism = after->GetPointData()->GetArray("mechanism without tension");
  ASSERT_TRUE(displacement != nullptr && mechanism != nullptr);
  for (vtkIdType id = 0; id < after->GetNumberOfPoints(); ++id) {
    EXPECT_DOUBLE_EQ(displacement->GetTuple3(id)[0], 1e-4 * after->GetPoint(id)[0]);
    EXPECT_DOUBLE_EQ(displacement->GetTuple3(id)[1], -5e-4 * after->GetPoint(id)[1]);
    EXPECT_EQ(mechanism->GetTuple3(id)[1], 0.5);
  }
  auto* material =
      vtkStringArray::SafeDownCast(before->GetCellData()->GetAbstractArray("material"));
  ASSERT_NE(material, nullptr);
  for (vtkIdType cell = 0; cell < before->GetNumberOfCells(); ++cell) {
    EXPECT_NE(material->GetValue(cell), "cut");  // it is masonry until it is cut out
  }
}

TEST(VtkWriter, SupportsOfEveryStageAreThoseOfTheResultsFile) {
  const test::ScratchFolder scratch;
  const solver::JobResult result = test::made_up_staged_result();
  write_vtk(result, scratch.path());
  const auto supports = read_supports(scratch.path());
  vtkPointData* data = supports->GetPointData();
  auto* names = vtkStringArray::SafeDownCast(data->GetAbstractArray("name"));
  ASSERT_NE(names, nullptr);
  const auto up = [&](vtkDataArray* reactions, const std::string& name) {
    return reactions->GetTuple3(names->LookupValue(name))[1];
  };
  int with_beam = 0;
  const auto answer = nlohmann::json::parse(results_json(result, {}));
  for (const auto& stage : answer.at("stages")) {
    for (const auto& [model, analysis] : stage.at("analyses").items()) {
      const std::string label =
          "reaction " + stage.at("name").get<std::string>() + " " + model + " [kN]";
      vtkDataArray* reactions = data->GetArray(label.c_str());
      ASSERT_NE(reactions, nullptr) << label;
      for (const auto& [name, force] : analysis.at("needles").items()) {
        EXPECT_DOUBLE_EQ(up(reactions, name), force) << label << " " << name;
      }
      const auto& base = analysis.at("base");
      EXPECT_DOUBLE_EQ(up(reactions, "left pier"), base.at("left")) << label;
      EXPECT_DOUBLE_EQ(up(reactions, "base under the cut"), base.value("cut", 0.0)) << label;
      if (analysis.contains("joists")) {
        EXPECT_DOUBLE_EQ(up(reactions, "joists on floor shore"),
                         analysis.at("joists").at("floor shore").at("force"));
      }
      if (!analysis.contains("beam")) continue;
      ++with_beam;
      EXPECT_DOUBLE_EQ(up(reactions, "beam left end"), analysis.at("beam").at("reaction_left"));
      EXPECT_DOUBLE_EQ(up(reactions, "beam right end"), analysis.at("beam").at("reaction_right"));
    }
  }
  EXPECT_GT(with_beam, 0);
}

TEST(VtkWriter, TheBeamLiesUnderItsPackingOnItsPadstones) {
  const test::ScratchFolder scratch;
  write_vtk(test::made_up_staged_result(), scratch.path());
  const auto supports = read_supports(scratch.path());
  ASSERT_EQ(supports->GetNumberOfPolys(), 3);
  auto* parts = vtkStringArray::SafeDownCast(supports->GetCellData()->GetAbstractArray("part"));
  ASSERT_NE(parts, nullptr);
  const vtkIdType beam = parts->LookupValue("beam");
  const vtkIdType padstone = parts->LookupValue("padstone");
  double bounds[6];  // NOLINT(modernize-avoid-c-arrays): VTK's
  supports->GetCellBounds(beam, bounds);
  EXPECT_DOUBLE_EQ(bounds[0], 850.0);  // 150 mm of bearing left of the cut
  EXPECT_DOUBLE_EQ(bounds[1], 3150.0);
  EXPECT_DOUBLE_EQ(bounds[3], 1475.0);  // 25 mm of packing under the soffit
  const double underside = bounds[2];
  EXPECT_DOUBLE_EQ(underside, 1475.0 - 203.2);
  supports->GetCellBounds(padstone, bounds);
  EXPECT_DOUBLE_EQ(bounds[3], underside);
  EXPECT_DOUBLE_EQ(bounds[1] - bounds[0], 300.0);
}

solver::JobResult framed_result() {
  solver::JobResult result = test::made_up_staged_result();
  viz::put_on_frame(result, viz::made_up_frame("F1"));
  return result;
}

vtkStringArray* parts_of(vtkPolyData* lines) {
  return vtkStringArray::SafeDownCast(lines->GetCellData()->GetAbstractArray("part"));
}

// results.json has ten digits: half a unit of the last is 5e-9 for what is under 100.
constexpr double ten_digits = 5e-9;

TEST(VtkWriter, NeedlesAndPropsAreLinesWithTheForcesOfTheResultsFile) {
  const test::ScratchFolder scratch;
  const solver::JobResult result = framed_result();
  write_vtk(result, scratch.path());
  const auto lines = read_shapes(scratch.path() / "needles.vtp");
  vtkStringArray* parts = parts_of(lines);
  vtkDataArray* moment = lines->GetPointData()->GetArray("moment [kNm]");
  vtkDataArray* shear = lines->GetPointData()->GetArray("shear [kN]");
  vtkDataArray* load = lines->GetCellData()->GetArray("load [kN]");
  ASSERT_TRUE(parts != nullptr && moment != nullptr && shear != nullptr && load != nullptr);
  const auto answer = nlohmann::json::parse(results_json(result, {}));
  const auto frames = answer.at("needle_frames");
  ASSERT_EQ(frames.size(), 2U);
  for (const auto& [name, frame] : frames.items()) {
    const vtkIdType needle = parts->LookupValue(name);
    ASSERT_GE(needle, 0) << name;
    EXPECT_NEAR(load->GetTuple1(needle), frame.at("load"), ten_digits) << name;
    double largest_moment = 0.0;
    double largest_shear = 0.0;
    const vtkSmartPointer<vtkIdList> ids = vtkSmartPointer<vtkIdList>::New();
    lines->GetCellPoints(needle, ids);
    for (vtkIdType i = 0; i < ids->GetNumberOfIds(); ++i) {
      largest_moment = std::max(largest_moment, std::abs(moment->GetTuple1(ids->GetId(i))));
      largest_shear = std::max(largest_shear, std::abs(shear->GetTuple1(ids->GetId(i))));
    }
    EXPECT_NEAR(largest_moment, frame.at("largest_moment"), ten_digits) << name;
    EXPECT_NEAR(largest_shear, frame.at("largest_shear"), ten_digits) << name;
    const auto& props = frame.at("props");
    for (const auto& prop : props) {
      const std::string mark = prop.at("mark").get<std::string>();
      const vtkIdType line = parts->LookupValue(name + " " + mark + " prop");
      ASSERT_GE(line, 0) << mark;
      EXPECT_NEAR(load->GetTuple1(line), prop.at("load"), ten_digits) << mark;
    }
  }
}

TEST(VtkWriter, PropsReachFromTheNeedlesUndersideToTheirSoles) {
  const test::ScratchFolder scratch;
  write_vtk(framed_result(), scratch.path());
  const auto lines = read_shapes(scratch.path() / "needles.vtp");
  // The soffit is at 1500 mm, 50 mm of packing under it, and the needle is 152.4 mm deep; the
  // outer ground is 150 mm below the base and the sole 50 mm thick.
  double bounds[6];  // NOLINT(modernize-avoid-c-arrays): VTK's
  lines->GetCellBounds(parts_of(lines)->LookupValue("N2 outer prop"), bounds);
  EXPECT_DOUBLE_EQ(bounds[0], 2500.0);
  EXPECT_DOUBLE_EQ(bounds[4], -125.0 - 900.0);  // outside is negative
  lines->GetCellBounds(parts_of(lines)->LookupValue("N2"), bounds);
  EXPECT_DOUBLE_EQ(bounds[2], 1500.0 - 50.0 - 76.2);
  EXPECT_DOUBLE_EQ(bounds[4], -125.0 - 900.0);
  EXPECT_DOUBLE_EQ(bounds[5], 125.0 + 600.0);
}

/// The names of all fields of a data set.
std::set<std::string> fields_of(vtkDataSet* data) {
  std::set<std::string> names;
  for (vtkFieldData* fields : std::initializer_list<vtkFieldData*>{
           data->GetPointData(), data->GetCellData(), data->GetFieldData()}) {
    for (int i = 0; i < fields->GetNumberOfArrays(); ++i) {
      names.insert(fields->GetAbstractArray(i)->GetName());
    }
  }
  return names;
}

std::string text_of(const fs::path& path) {
  std::ostringstream text;
  text << std::ifstream(path).rdbuf();
  return text.str();
}

TEST(VtkReadme, NamesEveryFieldThatIsThere) {
  const test::ScratchFolder scratch;
  const solver::JobResult result = framed_result();
  write_vtk(result, scratch.path());
  const std::string readme = text_of(scratch.path() / "README.txt");
  std::set<std::string> names = fields_of(read_shapes(scratch.path() / "needles.vtp"));
  names.merge(fields_of(read_grid(scratch.path() / "wall-02-cut-cracked.vtu")));
  EXPECT_GE(names.size(), 20U);
  for (const std::string& name : names) {
    EXPECT_THAT(readme, ::testing::HasSubstr("\n  " + name + " (")) << name;
  }
  const std::set<std::string> supports = fields_of(read_supports(scratch.path()));
  for (const std::string& name : supports) {
    const bool known = name.starts_with("reaction ") && name.ends_with(" [kN]");
    EXPECT_TRUE(known || readme.find("\n  " + name + " (") != std::string::npos) << name;
  }
  for (const char* file : {"wall.pvd", "wall-*.vtu", "supports.vtp", "needles.vtp"}) {
    EXPECT_THAT(readme, ::testing::HasSubstr(std::string("\n") + file + "\n"));
  }
}

TEST(VtkReadme, NamesNoFieldThatIsNeverThere) {
  const test::ScratchFolder scratch;
  write_vtk(framed_result(), scratch.path());
  std::set<std::string> names = fields_of(read_grid(scratch.path() / "wall-02-cut-cracked.vtu"));
  write_vtk(test::made_up_result_that_falls("it spreads"), scratch.path());
  names.merge(fields_of(read_grid(scratch.path() / "wall-cut-cracked.vtu")));
  for (const VtkField& field : wall_fields()) EXPECT_TRUE(names.contains(field.name)) << field.name;
  const std::set<std::string> needles = fields_of(read_shapes(scratch.path() / "needles.vtp"));
  for (const VtkField& field : needle_fields()) {
    EXPECT_TRUE(needles.contains(field.name)) << field.name;
  }
}

TEST(VtkReadme, FitsEightyColumns) {
  std::istringstream lines(vtk_readme());
  for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 80U) << line;
}

TEST(VtkWriter, AFolderThatIsNotThereIsAFileError) {
  const test::ScratchFolder scratch;
  EXPECT_THROW(write_vtk(test::made_up_result(), scratch.path() / "missing"), FileError);
}

}  // namespace
}  // namespace deadshore::io
