#include "io/error.h"
#include "io/job_reader.h"
#include "tests/io/core_keys.h"

#include <gtest/gtest.h>

#include <fstream>
#include <ostream>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

/// An entry of tests/io/data/bad_jobs.txt.
struct BadJob {
  std::string name;
  std::string old_part;
  std::string new_part;
  std::string error;

  friend void PrintTo(const BadJob& job, std::ostream* out) { *out << job.error; }
};

std::vector<BadJob> read_bad_jobs() {
  std::ifstream file(DEADSHORE_SOURCE_DIR "/tests/io/data/bad_jobs.txt");
  std::vector<BadJob> jobs;
  const auto append = [](std::string& part, const std::string& line) {
    if (!part.empty()) part += '\n';
    part += line;
  };
  for (std::string line; std::getline(file, line);) {
    const std::string rest = line.size() > 3 ? line.substr(3) : "";
    if (line.starts_with("==")) {
      jobs.push_back({.name = rest, .old_part = "", .new_part = "", .error = ""});
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
  EXPECT_GE(read_bad_jobs().size(), 60U);
}

class BadJobs : public ::testing::TestWithParam<BadJob> {};

TEST_P(BadJobs, AreRefusedInOneLine) {
  const std::string text = with(core_keys(), GetParam().old_part, GetParam().new_part);
  ASSERT_FALSE(text.empty()) << "core_keys.toml does not hold\n" << GetParam().old_part;
  try {
    static_cast<void>(parse_job(text, "yard.toml"));
    FAIL() << "read without complaint";
  } catch (const InputError& error) {
    EXPECT_EQ(error.what(), GetParam().error);
  }
}

INSTANTIATE_TEST_SUITE_P(Text, BadJobs, ::testing::ValuesIn(read_bad_jobs()),
                         [](const auto& entry) { return entry.param.name; });

}  // namespace
}  // namespace deadshore::io
