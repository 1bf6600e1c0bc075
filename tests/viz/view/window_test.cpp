// Run on a display, by with_display.sh: pictures are told apart by what is in them, keys by the
// title of the window, which says what it shows.
#include "tests/viz/view/picture.h"
#include "tests/viz/view/shown_folder.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <sys/wait.h>
#include <thread>

namespace deadshore::viz {
namespace {

namespace fs = std::filesystem;
using ::testing::HasSubstr;

std::string text_of(const fs::path& path) {
  std::ostringstream text;
  text << std::ifstream(path).rdbuf();
  return text.str();
}

class ViewOnDisplay : public ::testing::Test {
 protected:
  [[nodiscard]] fs::path beside(const char* name) const {
    return folder.path().parent_path() / name;
  }
  /// The exit status of `deadshore view` on the folder.
  int view(const std::string& options) const {
    const std::string command =
        fmt::format("{} view '{}' {} >'{}' 2>'{}'", DEADSHORE_PROGRAM, folder.path().string(),
                    options, beside("out.txt").string(), beside("err.txt").string());
    return WEXITSTATUS(std::system(command.c_str()));  // NOLINT(cert-env33-c): a fixed command
  }
  [[nodiscard]] test::Picture picture(const std::string& options) const {
    const fs::path file = beside("picture.png");
    fs::remove(file);
    EXPECT_EQ(view(options + " --picture '" + file.string() + "'"), 0)
        << text_of(beside("err.txt"));
    EXPECT_TRUE(fs::exists(file));
    return test::Picture(file);
  }
  test::ShownFolder folder;
};

// Where the made-up wall is seen from the side at 1280 x 800: between the columns.
constexpr int left = 262;
constexpr int right = 938;
constexpr int foot = 712;

double masonry_in(const test::Picture& picture) {
  return picture.share(left, 0, right, foot, test::is_masonry);
}

TEST_F(ViewOnDisplay, APictureHasTheWallTheLegendAndTheText) {
  const test::Picture cut = picture("--stage cut");
  ASSERT_EQ(cut.width(), 1280);
  ASSERT_EQ(cut.height(), 800);
  EXPECT_GT(masonry_in(cut), 0.15);
  // Letters of stage and choices, of the legend, and of the caution.
  EXPECT_GT(cut.share(0, 40, 260, 400, test::is_dark), 0.01);
  EXPECT_GT(cut.share(942, 0, 1280, 60, test::is_dark), 0.01);
  EXPECT_GT(cut.share(942, 60, 1010, 190, test::is_masonry), 0.2);
  EXPECT_GT(cut.share(262, 765, 800, 795,
                      [](const test::Pixel& p) { return p[0] > p[1] + 60 && p[0] > p[2] + 60; }),
            0.01);
}

// 3 of 11.75 m2 are cut out, and less is hidden behind them than they hid.
TEST_F(ViewOnDisplay, MasonryThatIsTakenOutIsNotSeen) {
  const double before = masonry_in(picture("--stage 'needles in' --magnify 0 --field none"));
  const double after = masonry_in(picture("--stage cut --magnify 0 --field none"));
  EXPECT_LT(after, 0.85 * before);
  EXPECT_GT(after, 0.65 * before);
}

TEST_F(ViewOnDisplay, FieldsColourTheWallAndNoneLeavesItPlain) {
  const auto dark_masonry = [](const test::Picture& shown) {
    return shown.share(left, 0, right, foot,
                       [](const test::Pixel& p) { return test::is_masonry(p) && p[2] < 120; });
  };
  EXPECT_GT(dark_masonry(picture("--stage cut --field 'displacement y'")), 0.02);
  EXPECT_LT(dark_masonry(picture("--stage cut --field none")), 0.005);
}

// At 400 times the made-up wall is drawn a fifth lower and 4% wider than at 0.
TEST_F(ViewOnDisplay, MagnifiedMovementsChangeTheOutlineOfTheWall) {
  const auto topmost = [](const test::Picture& shown) {
    for (int y = 0; y < foot; ++y) {
      if (shown.share(left, y, right, y + 1, test::is_masonry) > 0.1) return y;
    }
    return foot;
  };
  const int built = topmost(picture("--stage 'as built' --magnify 0"));
  const int moved = topmost(picture("--stage 'as built' --magnify 400"));
  EXPECT_GT(moved, built + 40);
}

TEST_F(ViewOnDisplay, WhatIsPickedIsPrintedAndShown) {
  const test::Picture without = picture("--stage cut");
  const test::Picture with = picture("--stage cut --pick N1");
  EXPECT_THAT(text_of(beside("out.txt")), HasSubstr("Reaction now: 20.00 kN"));
  EXPECT_GT(with.share(942, 260, 1280, 700, test::is_dark),
            without.share(942, 260, 1280, 700, test::is_dark) + 0.01);
}

TEST_F(ViewOnDisplay, APictureThatCannotBeWrittenIsOneLineAndStatusOne) {
  EXPECT_EQ(view("--picture /nowhere/picture.png"), 1);
  EXPECT_THAT(text_of(beside("err.txt")), HasSubstr("/nowhere/picture.png"));
}

/// A view that runs while the test presses its keys.
class RunningView : public ViewOnDisplay {
 protected:
  RunningView() {
    const std::string command = fmt::format(
        "{} view '{}' >'{}' 2>'{}'; echo $? >'{}'", DEADSHORE_PROGRAM, folder.path().string(),
        beside("out.txt").string(), beside("err.txt").string(), beside("status.txt").string());
    viewing_ = std::thread([command] {
      (void)!std::system(command.c_str());  // NOLINT(cert-env33-c): a fixed command
    });
    const auto is_there = [&] {
      window_ = said("xdotool search --name '^Deadshore, ' | tail -1");
      return !window_.empty() || fs::exists(beside("status.txt"));
    };
    wait_for(is_there);
    if (window_.empty()) return;
    (void)said("xdotool mousemove 600 400");
    wait_for([&] {
      (void)said("xdotool windowfocus " + window_);
      return said("xdotool getwindowfocus") == window_;
    });
  }
  ~RunningView() override {
    if (!fs::exists(beside("status.txt"))) press("q");
    wait_for([&] { return fs::exists(beside("status.txt")); });
    if (!fs::exists(beside("status.txt"))) (void)said("xdotool windowkill " + window_);
    viewing_.join();
  }
  /// What a command prints, without its last line end.
  static std::string said(const std::string& command) {
    FILE* pipe = popen((command + " 2>/dev/null").c_str(), "r");
    std::string text;
    std::array<char, 256> part{};
    while (pipe != nullptr && fgets(part.data(), part.size(), pipe) != nullptr) text += part.data();
    if (pipe != nullptr) pclose(pipe);
    while (text.ends_with('\n')) text.pop_back();
    return text;
  }
  /// Until it is so, or half a minute has gone.
  static void wait_for(const std::function<bool()>& is_so) {
    for (int i = 0; i < 300 && !is_so(); ++i) {
      std::this_thread::sleep_for(std::chrono::milliseconds(100));
    }
  }
  void press(const std::string& keys) const {
    if (!window_.empty()) (void)said("xdotool key " + keys);
  }
  [[nodiscard]] std::string title() const {
    return window_.empty() ? "no window: " + text_of(beside("err.txt"))
                           : said("xdotool getwindowname " + window_);
  }
  /// Whether the title comes to hold this.
  [[nodiscard]] bool comes_to_show(const std::string& what) const {
    wait_for([&] { return window_.empty() || title().find(what) != std::string::npos; });
    return title().find(what) != std::string::npos;
  }

 private:
  std::string window_;
  std::thread viewing_;
};

TEST_F(RunningView, KeysLeadThroughStagesAnalysesFieldsAndMagnifications) {
  EXPECT_TRUE(comes_to_show("wall-out: stage 1 of 5 (as built), cracked")) << title();
  press("Right");
  EXPECT_TRUE(comes_to_show("stage 2 of 5 (needles in)")) << title();
  press("Right");
  EXPECT_TRUE(comes_to_show("stage 3 of 5 (cut)")) << title();
  press("Right");
  EXPECT_TRUE(comes_to_show("stage 4 of 5")) << title();
  press("Left");
  EXPECT_TRUE(comes_to_show("stage 3 of 5 (cut)")) << title();
  press("a");
  EXPECT_TRUE(comes_to_show("uncracked")) << title();
  press("3");
  EXPECT_TRUE(comes_to_show("displacement y [mm]")) << title();
  press("n");
  EXPECT_TRUE(comes_to_show("no field")) << title();
  press("minus minus minus minus minus minus minus minus minus");
  EXPECT_TRUE(comes_to_show("movements 0 x")) << title();
  press("plus");
  EXPECT_TRUE(comes_to_show("movements 1 x")) << title();
}

TEST_F(RunningView, AClickOnTheRowOfStagesGoesThere) {
  ASSERT_TRUE(comes_to_show("stage 1 of 5"));
  (void)said("xdotool mousemove 900 738 click 1");
  EXPECT_TRUE(comes_to_show("stage 5 of 5 (finished)")) << title();
}

// From the front the wall fills the space between the columns up to 8%: 4 m are about 600 pixels.
// Its upper left quarter is masonry, and N1 hangs at x = 1500 mm, y = 1500 mm.
TEST_F(RunningView, AClickReadsWhatIsThereAndAnotherBesideItNothing) {
  ASSERT_TRUE(comes_to_show("stage 1 of 5"));
  press("Right Right f minus minus minus minus minus minus minus");
  ASSERT_TRUE(comes_to_show("movements 0 x"));
  (void)said("xdotool mousemove 420 200 click 1");
  EXPECT_TRUE(comes_to_show("reads Wall at x ")) << title();
  (void)said("xdotool mousemove 600 690 click 1");
  wait_for([&] { return title().find("reads") == std::string::npos; });
  EXPECT_EQ(title().find("reads"), std::string::npos) << title();
}

TEST_F(RunningView, SavesItsPictureBesideTheFolderAndSaysWhere) {
  ASSERT_TRUE(comes_to_show("stage 1 of 5"));
  press("Right Right p");
  const fs::path file = beside("wall-out-02-cut-cracked.png");
  wait_for([&] { return !text_of(beside("out.txt")).empty(); });
  ASSERT_TRUE(fs::exists(file));
  EXPECT_GT(masonry_in(test::Picture(file)), 0.15);
  EXPECT_THAT(text_of(beside("out.txt")), HasSubstr(file.string()));
}

TEST_F(RunningView, LeavesWithStatusZero) {
  ASSERT_TRUE(comes_to_show("stage 1 of 5"));
  press("q");
  wait_for([&] { return !text_of(beside("status.txt")).empty(); });
  EXPECT_EQ(text_of(beside("status.txt")), "0\n");
}

}  // namespace
}  // namespace deadshore::viz
