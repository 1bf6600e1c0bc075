#include "io/files/memory_limit.h"

#include "io/error.h"
#include "io/job/job_reader.h"
#include "solver/study/memory_need.h"
#include "tests/io/core_keys.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <iterator>
#include <limits>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

constexpr double mib = 1024.0 * 1024.0;

solver::Job job_with_mesh(const std::string& text, double size) {
  solver::Job job = parse_job(text, "yard.toml");
  job.analysis.mesh_size = size;
  return job;
}

// Peaks of `deadshore run --timings`, one thread, on Debian 12.
TEST(MemoryNeed, IsNotLessThanRunsTookAndNotTwiceAsMuch) {
  const std::string at_once = core_keys();
  std::ifstream example(DEADSHORE_SOURCE_DIR "/io/examples/kitchen_wall.toml");
  const std::string staged{std::istreambuf_iterator<char>(example), {}};
  using mesh::QuadOrder;
  struct Measured {
    const std::string& job;
    QuadOrder element;
    double mesh;
    double mib;
  };
  const std::vector<Measured> runs = {
      {at_once, QuadOrder::eight_node, 200.0, 80.0},  {at_once, QuadOrder::eight_node, 100.0, 82.0},
      {at_once, QuadOrder::eight_node, 50.0, 161.0},  {at_once, QuadOrder::eight_node, 25.0, 575.0},
      {at_once, QuadOrder::eight_node, 12.0, 2571.0}, {at_once, QuadOrder::four_node, 25.0, 167.0},
      {staged, QuadOrder::eight_node, 200.0, 115.0},  {staged, QuadOrder::eight_node, 100.0, 161.0},
      {staged, QuadOrder::eight_node, 50.0, 361.0},   {staged, QuadOrder::eight_node, 25.0, 1303.0},
      {staged, QuadOrder::four_node, 25.0, 571.0}};
  for (const Measured& run : runs) {
    solver::Job job = job_with_mesh(run.job, run.mesh);
    job.analysis.element = run.element;
    const double need = solver::memory_needed(job) / mib;
    EXPECT_GE(need, run.mib) << run.mesh;
    EXPECT_LE(need, 2.0 * run.mib) << run.mesh;
  }
}

TEST(MemoryNeed, GrowsAsElementsShrinkAndWithEachStage) {
  const solver::Job job = parse_job(test_data("staged_keys.toml"), "yard.toml");
  double before = 0.0;
  for (const double size : {400.0, 200.0, 100.0, 50.0, 5.0, 0.5}) {
    solver::Job finer = job;
    finer.analysis.mesh_size = size;
    const double need = solver::memory_needed(finer);
    EXPECT_GT(need, before) << size;
    before = need;
  }
  solver::Job at_once = job;
  at_once.analysis.sequence = solver::Sequence::at_once;
  EXPECT_GT(solver::memory_needed(job), solver::memory_needed(at_once));
}

TEST(MemoryNeed, TheSmallestMeshFitsAndOneMillimetreLessDoesNot) {
  for (const double memory : {200.0 * mib, 1000.0 * mib, 8000.0 * mib}) {
    const double fits = solver::smallest_mesh_within(job_with_mesh(core_keys(), 50.0), memory);
    ASSERT_GT(fits, 1.0);
    EXPECT_LE(solver::memory_needed(job_with_mesh(core_keys(), fits)), memory);
    EXPECT_GT(solver::memory_needed(job_with_mesh(core_keys(), fits - 1.0)), memory);
  }
  EXPECT_EQ(solver::smallest_mesh_within(job_with_mesh(core_keys(), 50.0), 10.0 * mib), 0.0);
}

std::string refusal(const solver::Job& job, double memory) {
  try {
    refuse_what_does_not_fit(job, "yard.toml", memory);
  } catch (const FileError& error) {
    return error.what();
  }
  return "";
}

TEST(MemoryLimit, IsTheNeedItself) {
  const solver::Job job = job_with_mesh(core_keys(), 10.0);
  const double need = solver::memory_needed(job);
  EXPECT_EQ(refusal(job, need), "");
  EXPECT_NE(refusal(job, std::nextafter(need, 0.0)), "");
}

TEST(MemoryLimit, SaysWhatIsNeededAndWhatWouldFit) {
  const std::string line = refusal(job_with_mesh(core_keys(), 5.0), 2e9);
  EXPECT_THAT(line, ::testing::StartsWith("yard.toml: analysis.mesh: elements of 5 mm need some"));
  EXPECT_THAT(line, ::testing::HasSubstr("2 GB can be had; "));
  EXPECT_THAT(line, ::testing::HasSubstr(" mm or more would fit"));
  EXPECT_THAT(refusal(job_with_mesh(core_keys(), 5.0), 1e6),
              ::testing::HasSubstr("no size would fit"));
}

TEST(AvailableMemory, IsReadFromTheSystemsOwnWords) {
  EXPECT_EQ(memory_in("MemTotal: 100 kB\nMemFree: 1 kB\nMemAvailable:   2048 kB\n"),
            2048.0 * 1024.0);
  EXPECT_FALSE(memory_in("").has_value());
  EXPECT_FALSE(memory_in("MemAvailable:\n").has_value());
  EXPECT_GT(available_memory(), 0.0);
}

}  // namespace
}  // namespace deadshore::io
