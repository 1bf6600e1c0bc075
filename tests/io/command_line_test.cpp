#include "tests/io/command_line.h"

#include "tests/io/core_keys.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <vtkCellData.h>
#include <vtkDataArray.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPolyData.h>
#include <vtkStringArray.h>
#include <vtkUnstructuredGrid.h>
#include <vtkXMLPolyDataReader.h>
#include <vtkXMLUnstructuredGridReader.h>

#include <filesystem>
#include <fstream>
#include <string>

namespace deadshore::io {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

using test::CommandLine;

TEST_F(CommandLine, ChecksASoundJob) {
  EXPECT_EQ(run("check yard.toml"), 0);
  EXPECT_EQ(output(), "yard.toml: sound (3 needles, 1 opening, 0 lintels, 2 loads, at once)\n");
  EXPECT_EQ(errors(), "");
}

TEST_F(CommandLine, CheckSaysHowManyStagesThereAre) {
  write("staged.toml", test_data("staged_keys.toml"));
  EXPECT_EQ(run("check staged.toml"), 0) << errors();
  EXPECT_THAT(output(), HasSubstr(", 5 stages)"));
  write("usual.toml", framed_keys());
  EXPECT_EQ(run("check usual.toml"), 0) << errors();
  EXPECT_THAT(output(), HasSubstr(", 3 usual stages)"));  // as built, needles in, cut
}

TEST_F(CommandLine, PrintsStagesThatCanBePastedIntoTheJob) {
  write("usual.toml", framed_keys());
  EXPECT_EQ(run("stages usual.toml"), 0) << errors();
  const std::string stages = output();
  EXPECT_THAT(stages, HasSubstr("# The usual order of work"));
  EXPECT_THAT(stages, HasSubstr("do   = [\"fit N1\", \"fit N2\"]"));
  write("own.toml", framed_keys() + stages);
  EXPECT_EQ(run("check own.toml"), 0) << errors();
  EXPECT_THAT(output(), HasSubstr(", 3 stages)"));
  EXPECT_EQ(run("stages yard.toml"), 0) << errors();
  EXPECT_THAT(output(), HasSubstr("sequence = \"at once\""));
}

TEST_F(CommandLine, NewWritesAJobThatIsSoundAndRuns) {
  EXPECT_EQ(run("new mine.toml"), 0) << errors();
  EXPECT_THAT(output(), HasSubstr("deadshore check mine.toml"));
  EXPECT_EQ(run("check mine.toml"), 0) << errors();
  EXPECT_THAT(output(), HasSubstr("mine.toml: sound (3 needles, 1 opening, 1 lintel, 2 loads"));
  const std::string job = test::text_of(path("mine.toml"));
  write("quick.toml", with(job, "mesh = \"100 mm\"", "mesh = \"200 mm\"\nsequence = \"at once\""));
  EXPECT_EQ(run("run quick.toml -o quick"), 0) << errors();
  EXPECT_THAT(output(), Not(HasSubstr("!! FAILS")));
  EXPECT_EQ(run("new"), 0);
  EXPECT_EQ(output(), job);
}

TEST_F(CommandLine, NewLeavesAFileAsItIsUnlessForced) {
  EXPECT_EQ(run("new yard.toml"), 1);
  EXPECT_TRUE(complained_in_one_line()) << errors();
  EXPECT_THAT(errors(), HasSubstr("yard.toml: is there already"));
  EXPECT_EQ(test::text_of(path("yard.toml")), core_keys());
  EXPECT_EQ(run("new yard.toml --force"), 0);
  EXPECT_NE(test::text_of(path("yard.toml")), core_keys());
}

TEST_F(CommandLine, ListsWhatAJobMayName) {
  EXPECT_EQ(run("sections 'UB 203'"), 0) << errors();
  EXPECT_THAT(output(), HasSubstr("\nUB 203x133x30 "));
  EXPECT_THAT(output(), Not(HasSubstr("UC ")));
  EXPECT_EQ(run("ground"), 0) << errors();
  EXPECT_EQ(run("timber"), 0) << errors();
  EXPECT_EQ(run("uses stairs"), 0) << errors();
  write("heavy.toml",
        "[[weight_group]]\nsource = \"invented\"\nrows = [ { name = \"lead flat\", "
        "area_weight = 0.9 } ]\n");
  EXPECT_EQ(run("materials --tables heavy.toml lead"), 0) << errors();
  EXPECT_THAT(output(), HasSubstr("\nlead flat "));
  write("own.toml",
        "[[timber_group]]\nsource = \"invented\"\nrows = [ { name = \"X9\", f_m = 9, "
        "f_c_0 = 9, f_c_90 = 2, f_v = 2, E_0_mean = 9000, E_0_05 = 6000, G_mean = 500, "
        "rho_k = 300, rho_mean = 350 } ]\n");
  EXPECT_EQ(run("timber --tables own.toml X9"), 0) << errors();
  EXPECT_THAT(output(), HasSubstr("\nX9 "));
}

TEST_F(CommandLine, AColourlessSummaryGoesIntoAFile) {
  write("usual.toml", framed_keys() +
                          "[analysis]\nmesh = \"200 mm\"\nmasonry = "
                          "[\"uncracked\"]\nsequence = \"at once\"\n");
  EXPECT_EQ(run("run usual.toml"), 0) << errors();
  EXPECT_THAT(output(), Not(HasSubstr("\033")));
  EXPECT_EQ(errors(), "");  // progress is for a terminal
}

TEST_F(CommandLine, VtkFilesOfARunAgreeWithItsResultsFile) {
  write("frame.toml", framed_keys() +
                          "[analysis]\nmesh = \"200 mm\"\nmasonry = "
                          "[\"uncracked\"]\nsequence = \"at once\"\n");
  ASSERT_EQ(run("run frame.toml -o out"), 0) << errors();
  const auto results = nlohmann::json::parse(test::text_of(path("out/results.json")));
  const auto& analysis = results.at("stages").at(0).at("analyses").at("uncracked");

  vtkNew<vtkXMLUnstructuredGridReader> wall;
  wall->SetFileName(path("out/wall-cut-uncracked.vtu").c_str());
  wall->Update();
  vtkDataArray* displacement = wall->GetOutput()->GetPointData()->GetArray("displacement [mm]");
  ASSERT_NE(displacement, nullptr);
  // results.json has ten digits.
  const double settlement = analysis.at("max_settlement");
  EXPECT_NEAR(-displacement->GetRange(1)[0], settlement, 1e-9 * settlement);

  vtkNew<vtkXMLPolyDataReader> needles;
  needles->SetFileName(path("out/needles.vtp").c_str());
  needles->Update();
  vtkDataArray* load = needles->GetOutput()->GetCellData()->GetArray("load [kN]");
  auto* parts =
      vtkStringArray::SafeDownCast(needles->GetOutput()->GetCellData()->GetAbstractArray("part"));
  ASSERT_TRUE(load != nullptr && parts != nullptr);
  const auto& frames = results.at("needle_frames");
  ASSERT_FALSE(frames.empty());
  for (const auto& [name, frame] : frames.items()) {
    const double due = frame.at("load");
    EXPECT_NEAR(load->GetTuple1(parts->LookupValue(name)), due, 1e-9 * due) << name;
  }
}

TEST_F(CommandLine, RefusesABadJobWithFileAndLine) {
  write("bad.toml", with(core_keys(), R"(x             = "1.4 m")", R"(x = "1.4 kN")"));
  EXPECT_EQ(run("check bad.toml"), 1);
  const std::string first = "bad.toml:49: needle[0].x: found \"1.4 kN\", a force; ";
  EXPECT_EQ(errors().substr(0, first.size()), first);
  EXPECT_TRUE(complained_in_one_line());
  EXPECT_EQ(run("run bad.toml"), 1);
}

TEST_F(CommandLine, StrictExitsWithThreeWhereACheckFails) {
  const std::string sound = framed_keys() +
                            "[analysis]\nmesh = \"200 mm\"\nmasonry = [\"uncracked\"]\n"
                            "sequence = \"at once\"\n"
                            "[[footing]]\nunder = \"left pier\"\nwidth = \"450 mm\"\n"
                            "depth = \"600 mm\"\nground = \"stiff clay\"\n"
                            "[[footing]]\nunder = \"right pier\"\nwidth = \"450 mm\"\n"
                            "depth = \"600 mm\"\nground = \"stiff clay\"\n";
  write("frame.toml", sound);
  EXPECT_EQ(run("run frame.toml --strict -o sound"), 0) << output() << errors();
  EXPECT_THAT(output(), Not(HasSubstr("!!")));
  write("floor.toml",
        with(sound, "ground         = \"stiff clay\"", "suspended_floor = \"joists\""));
  EXPECT_EQ(run("run floor.toml -o floor"), 0);
  EXPECT_THAT(output(), HasSubstr("!! NOT VERIFIED: N1 outer prop, suspended floor"));
  EXPECT_EQ(run("run floor.toml --strict -o floor"), 3);
}

TEST_F(CommandLine, WallThatDoesNotStandIsToldLoudlyWithoutReactions) {
  std::string falls = with(core_keys(), R"(left_end  = "held")", R"(left_end  = "free")");
  falls = with(falls, R"("0.05 N/mm2")", R"("0 N/mm2")");
  falls = with(falls, R"(mesh     = "50 mm")", R"(mesh     = "200 mm")");
  write("falls.toml", falls);
  EXPECT_EQ(run("run falls.toml -o falls"), 0) << errors();
  EXPECT_THAT(output(), HasSubstr("!! NO EQUILIBRIUM, cracked"));
  EXPECT_EQ(run("run falls.toml --strict -o falls"), 3);
  std::ifstream file(path("falls/results.json"));
  const auto results = nlohmann::json::parse(file);
  const auto& cracked = results.at("stages").at(0).at("analyses").at("cracked");
  EXPECT_FALSE(cracked.contains("needles"));
  EXPECT_FALSE(cracked.contains("base"));
  EXPECT_THAT(cracked.at("no_equilibrium").get<std::string>(), HasSubstr("tie"));
}

// No prop of EN 1065 carries 4 MN: that is a check that fails, with load and limit, and the rest
// goes on.
TEST_F(CommandLine, AnOverloadedNeedleIsACheckThatFails) {
  write("heavy.toml", framed_keys() +
                          "[[point_load]]\nname = \"crane\"\nx = \"1.4 m\"\nlevel = \"3 m\"\n"
                          "bearing = \"600 mm\"\ndead = \"4 MN\"\nimposed = \"0 kN\"\n"
                          "[analysis]\nmesh = \"200 mm\"\nmasonry = [\"uncracked\"]\n");
  EXPECT_EQ(run("run heavy.toml -o heavy"), 0) << errors();
  EXPECT_THAT(output(), HasSubstr("!! FAILS: N1, frame stands"));
  EXPECT_THAT(output(), HasSubstr("!! NOT TO BE BUILT"));
  EXPECT_EQ(run("run heavy.toml --strict -o heavy"), 3);
}

// So much that the needle's frame stands under no part of it worth naming, and has no stiffness to
// give.
TEST_F(CommandLine, AnAnalysisThatCannotBeTrustedExitsWithTwoAndWritesNothing) {
  write("heavy.toml", framed_keys() +
                          "[[point_load]]\nname = \"crane\"\nx = \"1.4 m\"\nlevel = \"3 m\"\n"
                          "bearing = \"600 mm\"\ndead = \"900 MN\"\nimposed = \"0 kN\"\n"
                          "[analysis]\nmesh = \"200 mm\"\nmasonry = [\"uncracked\"]\n");
  EXPECT_EQ(run("run heavy.toml -o heavy"), 2);
  EXPECT_THAT(errors(), HasSubstr("buckles"));
  EXPECT_TRUE(complained_in_one_line()) << errors();
  EXPECT_EQ(output(), "");
  EXPECT_FALSE(std::filesystem::exists(path("heavy")));
}

TEST_F(CommandLine, WithNoFontOnTheMachineItSaysSoAndWritesNothing) {
  write("fonts.conf", "<?xml version='1.0'?><!DOCTYPE fontconfig SYSTEM 'fonts.dtd'><fontconfig/>");
  EXPECT_EQ(run("run yard.toml --out yard", "FONTCONFIG_FILE=$PWD/fonts.conf"), 2);
  EXPECT_THAT(errors(), HasSubstr("fonts-dejavu-core"));
  EXPECT_TRUE(complained_in_one_line()) << errors();
  EXPECT_FALSE(std::filesystem::exists(path("yard")));
}

TEST_F(CommandLine, RefusesWhatItDoesNotKnow) {
  for (const char* arguments :
       {"", "run", "check none.toml", "stages", "stages none.toml", "run yard.toml --fast",
        "dig yard.toml", "check yard.toml two", "run yard.toml -o no/such/folder", "keys nail",
        "sections Z99", "props Z99", "timber --tables none.toml", "new no/such/folder/job.toml",
        "schema yard.toml"}) {
    EXPECT_EQ(run(arguments), 1) << arguments;
    EXPECT_TRUE(complained_in_one_line()) << arguments << "\n" << errors();
  }
}

TEST_F(CommandLine, TellsItsVersionAndHowItIsUsed) {
  EXPECT_EQ(run("--version"), 0);
  EXPECT_EQ(output().rfind("deadshore ", 0), 0U);
  EXPECT_EQ(run("--help"), 0);
  EXPECT_EQ(run("run --help"), 0);
}

}  // namespace
}  // namespace deadshore::io
