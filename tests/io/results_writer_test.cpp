#include "io/results/results_writer.h"

#include "io/error.h"
#include "io/files/output_folder.h"
#include "tests/io/made_up_result.h"
#include "tests/io/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <set>
#include <span>
#include <sstream>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

namespace fs = std::filesystem;
using ::testing::HasSubstr;
using ::testing::UnorderedElementsAre;

std::vector<viz::Figure> one_figure_named(const std::string& name) {
  std::vector<viz::Figure> figures(1);
  figures[0].name = name;
  figures[0].caption = "The wall.";
  figures[0].svg = "<svg xmlns=\"http://www.w3.org/2000/svg\"/>";
  figures[0].pdf = "not a document";
  figures[0].png = "not a picture";
  return figures;
}

const std::vector<viz::Figure> one_figure = one_figure_named("elevation");

std::string bytes_of(const fs::path& path) {
  std::ostringstream bytes;
  bytes << std::ifstream(path, std::ios::binary).rdbuf();
  return bytes.str();
}

std::set<std::string> names_in(const fs::path& folder) {
  std::set<std::string> names;
  for (const auto& entry : fs::directory_iterator(folder)) {
    names.insert(entry.path().filename().string());
  }
  return names;
}

std::map<std::string, std::string> contents_of(const fs::path& folder) {
  std::map<std::string, std::string> contents;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    if (entry.is_regular_file())
      contents[entry.path().lexically_relative(folder)] = bytes_of(entry);
  }
  return contents;
}

void put(const fs::path& path, const std::string& bytes) {
  std::ofstream(path) << bytes;
}

class ResultsWriter : public ::testing::Test {
 protected:
  void write(const solver::JobResult& result, std::span<const viz::Figure> figures = one_figure) {
    write_results(result, figures, {"wall.toml", "title = 1"}, out);
  }
  std::string refusal() {
    try {
      check_output_folder(out);
    } catch (const FileError& error) {
      return error.what();
    }
    return "accepted";
  }

  test::ScratchFolder scratch;
  fs::path out = scratch.path() / "wall-out";
};

TEST_F(ResultsWriter, WritesTheWholeFolderAndNothingBeside) {
  write(test::made_up_result());
  EXPECT_THAT(names_in(scratch.path()), UnorderedElementsAre("wall-out"));
  EXPECT_THAT(names_in(out),
              UnorderedElementsAre("note.html", "note.pdf", "sheet.html", "figures", "results.json",
                                   "reactions.csv", "wall.pvd", "wall-cut-uncracked.vtu",
                                   "wall-cut-cracked.vtu", "supports.vtp", "README.txt"));
  EXPECT_THAT(names_in(out / "figures"),
              UnorderedElementsAre("elevation.svg", "elevation.pdf", "elevation.png"));
  EXPECT_EQ(bytes_of(out / "figures" / "elevation.png"), "not a picture");
}

TEST_F(ResultsWriter, TheSameResultGivesTheSameBytes) {
  write(test::made_up_result());
  const auto first = contents_of(out);
  write(test::made_up_result());
  EXPECT_EQ(contents_of(out), first);
}

TEST_F(ResultsWriter, ANewRunReplacesTheEarlierOneWhole) {
  solver::JobResult result = test::made_up_result();
  write(result);
  result.job.title = "Changed";
  result.stages.front().analyses.pop_back();
  write(result);
  EXPECT_THAT(bytes_of(out / "results.json"), HasSubstr("\"Changed\""));
  EXPECT_FALSE(fs::exists(out / "wall-cut-cracked.vtu"));
  EXPECT_THAT(names_in(scratch.path()), UnorderedElementsAre("wall-out"));
}

TEST_F(ResultsWriter, AFailureLeavesTheEarlierResultAndNoRemains) {
  write(test::made_up_result());
  const auto before = contents_of(out);
  const std::vector<viz::Figure> unwritable = one_figure_named("no such folder/figure");
  EXPECT_THROW(write(test::made_up_result(), unwritable), FileError);
  EXPECT_EQ(contents_of(out), before);
  EXPECT_THAT(names_in(scratch.path()), UnorderedElementsAre("wall-out"));
}

TEST_F(ResultsWriter, AFailureOfAFirstRunLeavesNothing) {
  const std::vector<viz::Figure> unwritable = one_figure_named("no such folder/figure");
  EXPECT_THROW(write(test::made_up_result(), unwritable), FileError);
  EXPECT_TRUE(fs::is_empty(scratch.path()));
}

TEST_F(ResultsWriter, AFolderWithoutResultsIsNotReplaced) {
  fs::create_directory(out);
  put(out / "holiday.jpg", "picture");
  EXPECT_THAT(refusal(), HasSubstr("will not be replaced"));
  EXPECT_THROW(write(test::made_up_result()), FileError);
  EXPECT_EQ(bytes_of(out / "holiday.jpg"), "picture");
}

TEST_F(ResultsWriter, AnEarlierResultWithSomeoneElsesFileInItIsNotReplaced) {
  write(test::made_up_result());
  put(out / "figures" / "sketch.odg", "drawn on site");
  EXPECT_THAT(refusal(), HasSubstr("figures/sketch.odg"));
  EXPECT_THROW(write(test::made_up_result()), FileError);
  EXPECT_EQ(bytes_of(out / "figures" / "sketch.odg"), "drawn on site");
}

TEST_F(ResultsWriter, AnEmptyFolderIsFilled) {
  fs::create_directory(out);
  write(test::made_up_result());
  EXPECT_TRUE(fs::exists(out / "results.json"));
}

TEST_F(ResultsWriter, AFileInItsPlaceIsRefused) {
  put(out, "a file");
  EXPECT_THAT(refusal(), HasSubstr("is a file"));
  EXPECT_EQ(bytes_of(out), "a file");
}

TEST_F(ResultsWriter, AFolderThatCannotBeMadeIsRefusedByItsPath) {
  out = scratch.path() / "missing" / "wall-out";
  EXPECT_THAT(refusal(), HasSubstr("missing: no such folder"));
  put(scratch.path() / "file", "");
  out = scratch.path() / "file" / "wall-out";
  EXPECT_THAT(refusal(), HasSubstr("file: no such folder"));
  EXPECT_THROW(write(test::made_up_result()), FileError);
}

TEST_F(ResultsWriter, ABareNameIsAFolderBesideTheWorkingDirectory) {
  EXPECT_EQ(absolute_folder("wall-out"), fs::current_path() / "wall-out");
}

// Not even root may make a folder in /proc.
TEST_F(ResultsWriter, AnUnwritablePlaceIsAFileError) {
  out = "/proc/deadshore-out";
  EXPECT_THROW(write(test::made_up_result()), FileError);
}

TEST_F(ResultsWriter, ATrailingSlashAndALinkNameTheSameFolder) {
  write(test::made_up_result());
  fs::create_directory_symlink(out, scratch.path() / "link");
  solver::JobResult changed = test::made_up_result();
  changed.job.title = "Changed";
  write_results(changed, one_figure, {"wall.toml", "title = 2"}, scratch.path() / "link" / "");
  EXPECT_TRUE(fs::is_symlink(scratch.path() / "link"));
  EXPECT_THAT(bytes_of(out / "results.json"), HasSubstr("\"Changed\""));
}

}  // namespace
}  // namespace deadshore::io
