#include "io/job/job_reader.h"

#include "io/error.h"
#include "solver/loads/house_loads.h"
#include "tests/io/core_keys.h"
#include "tests/io/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <filesystem>
#include <fstream>
#include <random>
#include <string>

namespace deadshore::io {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

std::string refusal(const std::string& text) {
  try {
    static_cast<void>(parse_job(text, "yard.toml"));
    return "read without complaint";
  } catch (const InputError& error) {
    return error.what();
  }
}

void expect_same_job(const solver::Job& a, const solver::Job& b) {
  EXPECT_EQ(a.wall.length, b.wall.length);
  EXPECT_EQ(a.wall.height(), b.wall.height());
  EXPECT_EQ(a.thickness, b.thickness);
  EXPECT_EQ(a.masonry.unit_weight, b.masonry.unit_weight);
  EXPECT_EQ(a.masonry.E, b.masonry.E);
  EXPECT_EQ(a.masonry.tensile_strength, b.masonry.tensile_strength);
  EXPECT_EQ(a.wall.cut.left, b.wall.cut.left);
  EXPECT_EQ(a.wall.cut.right, b.wall.cut.right);
  EXPECT_EQ(a.wall.cut.soffit, b.wall.cut.soffit);
  EXPECT_EQ(a.line_loads.at(0).dead, b.line_loads.at(0).dead);
  EXPECT_EQ(a.line_loads.at(0).imposed, b.line_loads.at(0).imposed);
  EXPECT_EQ(a.point_loads.at(0).dead, b.point_loads.at(0).dead);
  EXPECT_EQ(a.needles.at(0).x, b.needles.at(0).x);
  EXPECT_EQ(a.needles.at(0).bearing_width, b.needles.at(0).bearing_width);
  EXPECT_EQ(a.needles.at(0).stiffness, b.needles.at(0).stiffness);
}

TEST(JobReader, ReadsTheCoreKeys) {
  const solver::Job job = parse_job(core_keys(), "yard.toml");
  EXPECT_EQ(job.title, "Old bakery, yard wall: opening for a workshop door");
  EXPECT_EQ(job.wall.length, 5600.0);
  ASSERT_EQ(job.wall.top.size(), 2U);
  EXPECT_EQ(job.wall.top[0].x, 0.0);
  EXPECT_EQ(job.wall.top[1].x, 5600.0);
  EXPECT_EQ(job.wall.top[1].y, 6100.0);
  EXPECT_EQ(job.thickness, 215.0);
  EXPECT_EQ(job.left_end, solver::WallEnd::held);
  EXPECT_EQ(job.right_end, solver::WallEnd::free);
  EXPECT_EQ(job.masonry.name, "soft brick in lime");
  EXPECT_EQ(job.masonry.unit_weight, 19.0e-6);
  EXPECT_EQ(job.masonry.E, 1500.0);
  EXPECT_EQ(job.masonry.nu, 0.2);
  EXPECT_EQ(job.masonry.compressive_strength, 2.4);
  EXPECT_EQ(job.masonry.tensile_strength, 0.05);
  ASSERT_EQ(job.wall.openings.size(), 1U);
  EXPECT_EQ(job.wall.openings[0].name, "stair window");
  EXPECT_EQ(job.wall.openings[0].right(), 2000.0);
  EXPECT_EQ(job.wall.openings[0].crown(), 5100.0);
  EXPECT_EQ(job.wall.openings[0].rise, 0.0);
  EXPECT_EQ(job.wall.cut.soffit, 2400.0);
  ASSERT_EQ(job.line_loads.size(), 1U);
  EXPECT_EQ(job.line_loads[0].level, 6100.0);
  EXPECT_DOUBLE_EQ(job.line_loads[0].characteristic(), 5.3);
  ASSERT_EQ(job.point_loads.size(), 1U);
  EXPECT_EQ(job.point_loads[0].characteristic(), 10500.0);
  ASSERT_EQ(job.needles.size(), 3U);
  EXPECT_EQ(job.needles[2].name, "N3");
  EXPECT_EQ(job.needles[2].x, 3800.0);
  EXPECT_EQ(job.needles[2].stiffness, 20000.0);
  EXPECT_EQ(job.needles[1].preload, 0.0);
  EXPECT_EQ(job.analysis.mesh_size, 50.0);
  EXPECT_THAT(job.analysis.masonry,
              ElementsAre(solver::MasonryModel::uncracked, solver::MasonryModel::cracked));
}

TEST(JobReader, TheGardenWallIsSound) {
  const solver::Job job = read_job(DEADSHORE_SOURCE_DIR "/io/examples/garden_wall.toml");
  EXPECT_EQ(job.needles.size(), 4U);
  EXPECT_EQ(job.wall.lintels.size(), 2U);
}

TEST(JobReader, WithoutAnalysisTheDefaultsHold) {
  const std::string text = core_keys();
  const solver::Job job = parse_job(text.substr(0, text.find("[analysis]")), "yard.toml");
  const solver::AnalysisOptions usual;
  EXPECT_EQ(job.analysis.mesh_size, usual.mesh_size);
  EXPECT_EQ(job.analysis.element, usual.element);
  EXPECT_EQ(job.analysis.masonry, usual.masonry);
  EXPECT_EQ(job.analysis.sequence, solver::Sequence::staged);
}

TEST(JobReader, ImperialAndOldMetricUnitsGiveTheSameJob) {
  std::string text = core_keys();
  text = with(text, R"("5.6 m")", R"("5600 mm")");
  text = with(text, R"("0.8 m")", R"("0.8e2 cm")");
  text = with(text, R"("215 mm")", R"("8.464566929133858 in")");
  text = with(text, R"("152 mm")", R"("5.984251968503937 inches")");
  text = with(text, R"(x             = "1.4 m")", R"(x = "4.593175853018373 ft")");
  text = with(text, R"("2.4 m")", R"("7.874015748031496 feet")");
  text = with(text, R"("1500 N/mm2")", R"("1.5 GPa")");
  text = with(text, R"("0.05 N/mm2")", R"("50 kN m-2")");
  text = with(text, R"("3.1 kN/m")", R"("316.1120260231577 kgf/m")");
  text = with(text, R"("2.2 kN/m")", R"("150.7478848849419 lbf/ft")");
  text = with(text, R"("6.5 kN")", R"("662.8155384356534 kgf")");
  text = with(text, R"("20 kN/mm")", R"("114202.9430946529 lbf/in")");
  // The numbers are those of core_keys.toml divided by 25.4, 304.8, 9.80665 and so on by hand.
  expect_same_job(parse_job(text, "yard.toml"), parse_job(core_keys(), "yard.toml"));
}

TEST(JobReader, AnOutlineIsTheTopFromLeftToRight) {
  std::string text = with(core_keys(), R"(height    = "6.1 m")", R"(height    = "8 m")");
  text = with(text, "[masonry.",
              "outline = [[\"0 m\", \"6.1 m\"], [\"2.8 m\", \"8 m\"], [\"5.6 m\", \"6.1 m\"]]\n"
              "[masonry.");
  text = with(text, R"(level   = "6.1 m")", R"(level   = "top")");
  const solver::Job job = parse_job(text, "yard.toml");
  ASSERT_EQ(job.wall.top.size(), 3U);
  EXPECT_EQ(job.wall.top[1].x, 2800.0);
  EXPECT_EQ(job.wall.height(), 8000.0);
  EXPECT_TRUE(job.line_loads[0].follows_top);
}

TEST(JobReader, ALineLoadRunsFromEndToEndUnlessSaid) {
  std::string text = with(core_keys(), R"(from    = "0 m")", "");
  text = with(text, R"(to      = "5.6 m")", "");
  const solver::Job job = parse_job(text, "yard.toml");
  EXPECT_EQ(job.line_loads[0].x.from, 0.0);
  EXPECT_EQ(job.line_loads[0].x.to, 5600.0);
  EXPECT_FALSE(job.line_loads[0].follows_top);
}

TEST(JobReader, ALintelIsOfItsMaterialUnlessSaid) {
  const std::string lintel =
      "[[lintel]]\nname = \"L\"\nopening = \"stair window\"\nmaterial = \"timber\"\n"
      "depth = \"175 mm\"\nbearing = \"150 mm\"\n";
  const solver::Job usual = parse_job(with(core_keys(), "[cut]", lintel + "[cut]"), "yard.toml");
  ASSERT_EQ(usual.lintels.size(), 1U);
  EXPECT_EQ(usual.wall.lintels.size(), 1U);
  EXPECT_EQ(usual.lintels[0].E, 11000.0);  // C24: EN 338 (from memory, unverified)
  EXPECT_EQ(usual.lintels[0].thickness, usual.thickness);

  const std::string said = lintel + "E = \"9000 N/mm2\"\nnu = 0.25\nthickness = \"100 mm\"\n";
  const solver::Job other = parse_job(with(core_keys(), "[cut]", said + "[cut]"), "yard.toml");
  EXPECT_EQ(other.lintels.at(0).E, 9000.0);
  EXPECT_EQ(other.lintels.at(0).nu, 0.25);
  EXPECT_EQ(other.lintels.at(0).thickness, 100.0);
}

TEST(JobReader, TheWallPicksItsMasonryByName) {
  const std::string hard =
      "[masonry.hard]\nunit_weight = \"21 kN/m3\"\nE = \"6000 N/mm2\"\nnu = 0.15\n"
      "compressive_strength = \"6 N/mm2\"\ntensile_strength = \"0.2 N/mm2\"\n";
  const std::string two = with(core_keys(), "[[opening]]", hard + "[[opening]]");
  EXPECT_EQ(parse_job(two, "yard.toml").masonry.E, 1500.0);
  EXPECT_EQ(parse_job(with(two, R"(= "soft brick in lime")", R"(= "hard")"), "yard.toml").masonry.E,
            6000.0);
}

TEST(JobReader, BytesThatAreNoTextAreRefused) {
  EXPECT_EQ(refusal(with(core_keys(), "purlin", "purl\xffn")),
            "yard.toml:40: found what is not TOML (Encountered invalid utf-8 sequence); a job file "
            "in TOML is due");
  EXPECT_THAT(refusal(with(core_keys(), "purlin", "pur\x01lin")), HasSubstr("yard.toml:40: "));
  EXPECT_THAT(refusal(std::string(200, '\0')), HasSubstr("yard.toml:1: "));
}

TEST(JobReader, DeeplyNestedTextIsRefused) {
  EXPECT_THAT(refusal("title = " + std::string(100000, '[')), HasSubstr("yard.toml:1: "));
}

TEST(JobReader, AMessageIsOneLineWhateverTheJobHolds) {
  const std::string text = with(core_keys(), R"("2.4 m")", "\"\"\"2.4\nmiles\\u0007\n\"\"\"");
  EXPECT_EQ(refusal(text).find_first_of("\n\a"), std::string::npos);
}

std::string file_refusal(const std::filesystem::path& path) {
  try {
    static_cast<void>(read_job(path));
    return "read without complaint";
  } catch (const FileError& error) {
    return error.what();
  }
}

class JobFile : public ::testing::Test {
 protected:
  const std::filesystem::path& folder() const { return folder_.path(); }
  std::filesystem::path write(const std::string& name, const std::string& text) const {
    std::ofstream(folder() / name, std::ios::binary) << text;
    return folder() / name;
  }

 private:
  test::ScratchFolder folder_;
};

TEST_F(JobFile, IsReadFromDisk) {
  EXPECT_EQ(read_job(write("yard.toml", core_keys())).needles.size(), 3U);
}

TEST_F(JobFile, WithMarkAndWindowsLineEndsReadsTheSame) {
  std::string text = "\xef\xbb\xbf";
  for (const char c : core_keys()) text += c == '\n' ? "\r\n" : std::string(1, c);
  expect_same_job(read_job(write("yard.toml", text)), parse_job(core_keys(), "yard.toml"));
}

TEST_F(JobFile, ThatIsMissingAFolderOrHugeIsRefused) {
  EXPECT_EQ(file_refusal(folder() / "none.toml"),
            (folder() / "none.toml").string() + ": No such file or directory");
  EXPECT_EQ(file_refusal(folder()), folder().string() + ": is a folder, not a file");
  const auto huge = write("huge.toml", std::string(5U << 20U, '#'));
  EXPECT_EQ(file_refusal(huge), huge.string() + ": is larger than 4 MB");
}

TEST(JobReader, DamagedJobsAreReadOrRefusedButNothingElse) {
  const Units units;
  const std::array<std::string, 2> jobs = {core_keys(), test_data("staged_keys.toml")};
  std::mt19937 random(20240607);
  const auto below = [&random](std::size_t n) { return random() % n; };
  int refused = 0;
  for (int round = 0; round < 1000; ++round) {
    const std::string& sound = jobs[below(jobs.size())];
    std::string text = sound;
    for (std::size_t hit = 1 + below(4); hit > 0; --hit) {
      const std::size_t at = below(text.size());
      switch (below(4)) {
        case 0:
          text[at] = static_cast<char>(below(256));
          break;
        case 1:
          text.erase(at, 1 + below(12));
          break;
        case 2:
          text.insert(at, sound.substr(below(sound.size()), 1 + below(12)));
          break;
        default:
          std::swap(text[at], text[below(text.size())]);
      }
    }
    try {
      EXPECT_TRUE(solver::find_faults(parse_job(text, "yard.toml", units)).empty());
    } catch (const InputError& error) {
      ++refused;
      EXPECT_GE(error.line(), 1);
    }
  }
  EXPECT_GT(refused, 500);
  EXPECT_LT(refused, 1000);
}

}  // namespace
}  // namespace deadshore::io
