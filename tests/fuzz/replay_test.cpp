#include "tests/fuzz/entries.h"
#include "tests/fuzz/mutate.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

namespace deadshore::fuzz {
namespace {

namespace fs = std::filesystem;

std::string text_of(const fs::path& path) {
  std::ostringstream text;
  text << std::ifstream(path, std::ios::binary).rdbuf();
  return text.str();
}

/// Every file of a folder of the sources whose name ends so, in the order of their names.
std::vector<std::string> texts_in(const std::string& folder, const std::string& ending) {
  std::vector<fs::path> paths;
  for (const auto& entry : fs::directory_iterator(DEADSHORE_SOURCE_DIR "/" + folder)) {
    if (entry.path().string().ends_with(ending)) paths.push_back(entry.path());
  }
  std::ranges::sort(paths);
  std::vector<std::string> texts;
  for (const fs::path& path : paths) texts.push_back(text_of(path));
  return texts;
}

std::vector<std::string> jobs() {
  std::vector<std::string> texts = texts_in("tests/io/data", ".toml");
  for (const std::string& text : texts_in("io/examples", ".toml")) texts.push_back(text);
  return texts;
}

/// Any entry on changed texts: what is thrown is the failure, with the text that led to it.
template <class Entry>
int replay(const std::vector<std::string>& seeds, int count, Entry entry) {
  std::mt19937 random(20250611);
  int sound = 0;
  for (int i = 0; i < count; ++i) {
    const std::string text = mutated(seeds[random() % seeds.size()], seeds, random);
    try {
      sound += entry(text) ? 1 : 0;
    } catch (const std::exception& error) {
      ADD_FAILURE() << error.what() << " from change " << i << ":\n" << text;
    }
  }
  return sound;
}

/// As many changes as a test has time for; DEADSHORE_FUZZ_TIMES times as many for a long look.
int changes(int usual) {
  const char* times = std::getenv("DEADSHORE_FUZZ_TIMES");
  return times == nullptr ? usual : usual * std::max(1, std::atoi(times));
}

TEST(Fuzz, JobsThatAreGivenAsExamplesAreSoundAndCanBeMeshed) {
  for (const std::string& job : jobs()) {
    EXPECT_TRUE(read_job(job)) << job;
  }
  EXPECT_TRUE(mesh_job(text_of(DEADSHORE_SOURCE_DIR "/io/examples/garden_wall.toml")));
}

TEST(Fuzz, WhatOnceFailedDoesSoNoMore) {
  const std::vector<std::string> finds = texts_in("tests/fuzz/corpus", "");
  ASSERT_FALSE(finds.empty());
  for (const std::string& find : finds) {
    EXPECT_NO_THROW(read_job(find)) << find.substr(0, 2000);
    EXPECT_NO_THROW(mesh_job(find)) << find.substr(0, 2000);
    EXPECT_NO_THROW(read_tables(find)) << find.substr(0, 2000);
  }
}

TEST(Fuzz, ChangedJobsAreReadOrRefused) {
  const int sound = replay(jobs(), changes(3000), read_job);
  // Both ways must be walked, or the changes are too tame or too wild.
  EXPECT_GT(sound, 100);
  EXPECT_LT(sound, changes(2900));
}

TEST(Fuzz, ChangedJobsAreMeshedOrRefused) {
  EXPECT_GT(replay(jobs(), changes(400), mesh_job), 20);
}

// Coarse elements: the sums are to be done, not to be right.
TEST(Fuzz, ChangedJobsAreAnalysedOrRefused) {
  std::vector<std::string> coarse = jobs();
  for (std::string& job : coarse) {
    const std::size_t mesh = job.find("\nmesh");
    if (mesh == std::string::npos) {
      job += "\n[analysis]\nmesh = \"400 mm\"\n";
    } else {
      job.replace(mesh, job.find('\n', mesh + 1) - mesh, "\nmesh = \"400 mm\"");
    }
  }
  EXPECT_GT(replay(coarse, changes(60), analyse_job), 1);
}

TEST(Fuzz, ChangedTablesAreReadOrRefused) {
  const int sound = replay(texts_in("io/data", ".toml"), changes(3000), read_tables);
  EXPECT_GT(sound, 100);
  EXPECT_LT(sound, changes(2900));
}

}  // namespace
}  // namespace deadshore::fuzz
