#include "io/error.h"
#include "io/job/job_reader.h"
#include "tests/io/core_keys.h"

#include <gtest/gtest.h>

#include <fstream>
#include <ostream>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

/// An entry of a list in tests/io/data, and the file that it changes.
struct BadJob {
  std::string base;
  std::string name;
  std::string old_part;
  std::string new_part;
  std::string error;

  friend void PrintTo(const BadJob& job, std::ostream* out) { *out << job.error; }
};

std::vector<BadJob> read_bad_jobs(const std::string& list, const std::string& base) {
  std::ifstream file(DEADSHORE_SOURCE_DIR "/tests/io/data/" + list);
  std::vector<BadJob> jobs;
  const auto append = [](std::string& part, const std::string& line) {
    if (!part.empty()) part += '\n';
    part += line;
  };
  for (std::string line; std::getline(file, line);) {
    const std::string rest = line.size() > 3 ? line.substr(3) : "";
    if (line.starts_with("==")) {
      jobs.push_back({.base = base, .name = rest, .old_part = "", .new_part = "", .error = ""});
    } else if (line.starts_with('-')) {
      append(jobs.back().old_part, rest);
    } else if (line.starts_with('+')) {
      append(jobs.back().new_part, rest);
    } else if (line.starts_with('=')) {
      jobs.back().error = rest;
    }
  }
  return jobs;
}

TEST(BadJobList, IsLong) {
  EXPECT_GE(read_bad_jobs("bad_jobs.txt", "").size(), 60U);
  EXPECT_GE(read_bad_jobs("bad_frames.txt", "").size(), 50U);
  EXPECT_GE(read_bad_jobs("bad_stages.txt", "").size(), 60U);
  EXPECT_GE(read_bad_jobs("bad_lifts.txt", "").size(), 25U);
  EXPECT_GE(read_bad_jobs("bad_shores.txt", "").size(), 40U);
  EXPECT_GE(read_bad_jobs("bad_house.txt", "").size(), 60U);
}

class BadJobs : public ::testing::TestWithParam<BadJob> {};

TEST_P(BadJobs, AreRefusedInOneLine) {
  const std::string base = GetParam().base;
  const std::string text = with(test_data(base), GetParam().old_part, GetParam().new_part);
  ASSERT_FALSE(text.empty()) << base << " does not hold\n" << GetParam().old_part;
  try {
    static_cast<void>(parse_job(text, "yard.toml"));
    FAIL() << "read without complaint";
  } catch (const InputError& error) {
    EXPECT_EQ(error.what(), GetParam().error);
  }
}

const auto name_of = [](const auto& entry) { return entry.param.name; };

INSTANTIATE_TEST_SUITE_P(Text, BadJobs,
                         ::testing::ValuesIn(read_bad_jobs("bad_jobs.txt", "core_keys.toml")),
                         name_of);
INSTANTIATE_TEST_SUITE_P(Frames, BadJobs,
                         ::testing::ValuesIn(read_bad_jobs("bad_frames.txt", "framed_keys.toml")),
                         name_of);
INSTANTIATE_TEST_SUITE_P(Lifts, BadJobs,
                         ::testing::ValuesIn(read_bad_jobs("bad_lifts.txt", "lift_keys.toml")),
                         name_of);
INSTANTIATE_TEST_SUITE_P(Shores, BadJobs,
                         ::testing::ValuesIn(read_bad_jobs("bad_shores.txt", "shored_keys.toml")),
                         name_of);
INSTANTIATE_TEST_SUITE_P(Stages, BadJobs,
                         ::testing::ValuesIn(read_bad_jobs("bad_stages.txt", "staged_keys.toml")),
                         name_of);
INSTANTIATE_TEST_SUITE_P(House, BadJobs,
                         ::testing::ValuesIn(read_bad_jobs("bad_house.txt", "house_keys.toml")),
                         name_of);

}  // namespace
}  // namespace deadshore::io
