// `deadshore view` where nothing can be shown: no display is needed to be told so.
#include "tests/viz/view/shown_folder.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <sys/wait.h>

namespace deadshore::viz {
namespace {

namespace fs = std::filesystem;
using ::testing::AllOf;
using ::testing::HasSubstr;

struct Outcome {
  int status = 0;
  std::string errors;
};

class ViewCommand : public ::testing::Test {
 protected:
  [[nodiscard]] Outcome outcome_of(const std::string& program, const std::string& arguments) const {
    const fs::path errors = scratch_.path() / "err.txt";
    const std::string command =
        fmt::format("env -u DISPLAY '{}' view {} >'{}' 2>'{}'", program, arguments,
                    (scratch_.path() / "out.txt").string(), errors.string());
    const int status = WEXITSTATUS(std::system(command.c_str()));  // NOLINT(cert-env33-c)
    std::ostringstream text;
    text << std::ifstream(errors).rdbuf();
    return {status, text.str()};
  }
  [[nodiscard]] Outcome outcome_of(const std::string& arguments) const {
    return outcome_of(DEADSHORE_PROGRAM, arguments);
  }
  [[nodiscard]] const fs::path& scratch() const { return scratch_.path(); }

 private:
  io::test::ScratchFolder scratch_;
};

/// One line, and the status of bad input.
void expect_refusal(const Outcome& outcome, const std::string& of_what) {
  EXPECT_EQ(outcome.status, 1) << outcome.errors;
  EXPECT_EQ(std::ranges::count(outcome.errors, '\n'), 1) << outcome.errors;
  EXPECT_THAT(outcome.errors, AllOf(::testing::StartsWith("deadshore: "), HasSubstr(of_what)));
}

TEST_F(ViewCommand, AFolderWithoutResultsIsRefused) {
  expect_refusal(outcome_of("'" + (scratch() / "none").string() + "'"), "no such folder");
  expect_refusal(outcome_of("'" + scratch().string() + "'"), "no folder of results");
}

TEST_F(ViewCommand, ABrokenFileIsNamedBeforeAnyWindow) {
  const test::ShownFolder folder;
  const std::string whole = folder.bytes_of("wall-02-cut-cracked.vtu");
  folder.put("wall-02-cut-cracked.vtu", whole.substr(0, whole.size() / 2));
  expect_refusal(outcome_of("'" + folder.path().string() + "'"), "wall-02-cut-cracked.vtu");
  folder.put("wall-02-cut-cracked.vtu", whole);
  folder.put("results.json", folder.bytes_of("results.json").substr(0, 500));
  expect_refusal(outcome_of("'" + folder.path().string() + "'"), "results.json");
}

TEST_F(ViewCommand, WithoutADisplayItSaysSo) {
  const test::ShownFolder folder;
  expect_refusal(outcome_of("'" + folder.path().string() + "'"), "no display");
  expect_refusal(outcome_of(fmt::format("'{}' --picture x.png", folder.path().string())),
                 "no display");
}

TEST_F(ViewCommand, WhatIsNotInTheFolderIsRefusedWithWhatIs) {
  const test::ShownFolder folder;
  const std::string of = "'" + folder.path().string() + "' ";
  expect_refusal(outcome_of(of + "--stage lunch"), "as built; needles in; cut; packed; finished");
  expect_refusal(outcome_of(of + "--analysis soft"), "uncracked; cracked");
  expect_refusal(outcome_of(of + "--field heat"), "displacement y [mm]");
  expect_refusal(outcome_of(of + "--pick N9"), "N1, N2");
  expect_refusal(outcome_of(of + "--magnify -1"), "--magnify");
  expect_refusal(outcome_of(of + "--magnify nan"), "--magnify");
}

TEST_F(ViewCommand, WithoutTheViewsProgramItSaysSo) {
  const test::ShownFolder folder;
  fs::copy_file(DEADSHORE_PROGRAM, scratch() / "deadshore");
  expect_refusal(outcome_of((scratch() / "deadshore").string(), "'" + folder.path().string() + "'"),
                 "deadshore-view: is not there");
}

}  // namespace
}  // namespace deadshore::viz
