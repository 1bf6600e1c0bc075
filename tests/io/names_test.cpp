// A name is a label: whatever things are called, all numbers stay as they are to the last bit. A
// name that cannot work is refused. No outside source.
#include "io/error.h"
#include "io/job/job_reader.h"
#include "io/results/reactions_csv.h"
#include "io/results/results_json.h"
#include "solver/study/analyse.h"
#include "solver/study/envelope.h"
#include "solver/study/stage_facts.h"
#include "tests/io/core_keys.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <map>
#include <sstream>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

using ::testing::HasSubstr;

/// What is named in every_name.toml, by the numbers between @ signs there.
enum Named : std::size_t {
  masonry,
  door,
  window,
  door_lintel,
  window_lintel,
  line_load,
  point_load,
  floor_of_house,
  loft,
  roof,
  purlin,
  partition,
  upper_wall,
  chimney,
  contents,
  needle,
  other_needle,
  frame,
  prop_mark,
  beam,
  shore,
  lifter,
  other_lifter,
  stand,
  other_stand,
  first_stage,
  needles_stage,
  cut_stage,
  padstones_stage,
  beam_stage,
  last_stage,
};

using Names = std::vector<std::string>;

const Names& plain_names() {
  static const Names names = {
      "brick",     "door",    "window",  "door lintel", "window lintel",  "canopy",     "winch",
      "floor",     "loft",    "roof",    "purlin",      "partition",      "upper wall", "chimney",
      "bath",      "N1",      "N2",      "F1",          "outer",          "beam",       "D1",
      "L1",        "L2",      "S1",      "S2",          "floors propped", "needles in", "cut",
      "padstones", "beam in", "finished"};
  return names;
}

/// Every word that the program uses itself where names stand, and names that look like none or are
/// long.
const Names& words() {
  static const Names all = {
      // regions, chains and beds
      "masonry", "cut", "pockets", "padstones", "padstone", "soffit", "top", "base left",
      "base right", "base cut", "left end", "right end", "pockets top", "padstones upper",
      "packing", "left bearing", "right bearing", "line load canopy", "point load winch",
      // supports
      "left pier", "right pier", "base under the cut", "joists on D1", "joists", "no needle",
      "beam left end", "beam right end", "needle left pier", "needle", "hand", "piers",
      // parts and members
      "N1 outer prop", "N1 inner", "D1 P1", "beam packing", "remedy", "load in all",
      // words of the order of work
      "all", "fit N1", "load on", "remove cut", "lintels", "as built", "N1 out", "packed",
      // models and methods
      "uncracked", "cracked", "dead", "imposed", "beam",
      // names of other things
      "N1", "F1", "D1", "window", "door lintel", "canopy", "floor", "brick", "L1",
      // odd ones
      "\u00a0", "\u200b", "0", "nan", "null", "\\\"]", std::string(100, 'M')};
  return all;
}

/// What a thing is called where the word itself would be refused (see the tests below).
std::string allowed(std::size_t thing, const std::string& word) {
  const bool is_lintel = thing == door_lintel || thing == window_lintel;
  const bool means_masonry = word == "cut" || word == "pockets";
  return is_lintel && means_masonry ? word + " lintel" : word;
}

/// Every thing gets another word, and after as many shifts as there are words each has had all.
Names shifted(std::size_t shift) {
  Names names;
  for (std::size_t thing = 0; thing < plain_names().size(); ++thing) {
    names.push_back(allowed(thing, words()[(thing + shift) % words().size()]));
  }
  return names;
}

std::string replaced(std::string text, const std::string& old_part, const std::string& new_part) {
  for (std::size_t at = text.find(old_part); at != std::string::npos;
       at = text.find(old_part, at + new_part.size())) {
    text.replace(at, old_part.size(), new_part);
  }
  return text;
}

std::string job_text(const Names& names, const std::string& options) {
  std::string text = test_data("every_name.toml");
  for (std::size_t thing = 0; thing < names.size(); ++thing) {
    const std::string quoted = nlohmann::json(names[thing]).dump();  // TOML escapes as JSON does
    text = replaced(text, fmt::format("@{}@", thing), quoted.substr(1, quoted.size() - 2));
  }
  return text + options;
}

constexpr const char* staged = "\n[analysis]\nmesh = \"200 mm\"\nmasonry = [\"uncracked\"]\n";
constexpr const char* cracked = "\n[analysis]\nmesh = \"200 mm\"\n";
constexpr const char* at_once =
    "\n[analysis]\nmesh = \"200 mm\"\nmasonry = [\"uncracked\"]\nsequence = \"at once\"\n";

/// All numbers of a document, without what they are called, in order of size.
void gather(const nlohmann::json& part, std::vector<double>& numbers) {
  if (part.is_number()) numbers.push_back(part.get<double>());
  if (part.is_structured()) {
    for (const auto& inner : part) gather(inner, numbers);
  }
}

/// Everything that one run answers, without names.
struct Answer {
  std::vector<double> in_json;                 ///< by size
  std::vector<std::string> in_csv;             ///< rows without stage and support, sorted
  std::vector<std::vector<double>> movements;  ///< of every analysis
  std::ptrdiff_t compared = -1;                ///< stage that the hand method is set against
  std::ptrdiff_t governing = -1;               ///< stage to look at first

  bool operator==(const Answer&) const = default;
};

std::vector<std::string> rows_without_names(const std::string& csv) {
  std::vector<std::string> rows;
  std::istringstream lines(csv);
  const std::string header = csv.substr(0, csv.find('\n'));
  const auto numbers = std::count(header.begin() + header.find("support"), header.end(), ',');
  for (std::string line; std::getline(lines, line);) {
    // Names stand in the columns up to "support"; the numbers after it, as many as the header says.
    std::size_t at = line.size();
    for (std::ptrdiff_t field = 0; field < numbers && at != std::string::npos; ++field) {
      at = at == 0 ? std::string::npos : line.rfind(',', at - 1);
    }
    rows.push_back(at == std::string::npos ? line : line.substr(at));
  }
  std::ranges::sort(rows);
  return rows;
}

Answer answer_to(const std::string& text) {
  const solver::JobResult result = solver::analyse(parse_job(text, "yard.toml"));
  Answer answer;
  gather(nlohmann::json::parse(results_json(result, {})), answer.in_json);
  std::ranges::sort(answer.in_json);
  answer.in_csv = rows_without_names(reactions_csv(result));
  for (const solver::StageResult& stage : result.stages) {
    for (const solver::PanelResult& analysis : stage.analyses) {
      answer.movements.push_back(analysis.fields.displacement);
    }
  }
  answer.compared = solver::compared_stage(result) - result.stages.data();
  answer.governing = solver::governing_stage(result) - result.stages.data();
  return answer;
}

const Answer& plain_answer(const std::string& options) {
  static std::map<std::string, Answer> known;
  const auto found = known.find(options);
  if (found != known.end()) return found->second;
  return known.emplace(options, answer_to(job_text(plain_names(), options))).first->second;
}

void expect_same(const Names& names, const std::string& options) {
  const Answer& plain = plain_answer(options);
  const Answer renamed = answer_to(job_text(names, options));
  ASSERT_GT(plain.in_json.size(), 500U);
  ASSERT_FALSE(plain.movements.empty());
  EXPECT_EQ(renamed.in_json, plain.in_json);
  EXPECT_EQ(renamed.in_csv, plain.in_csv);
  EXPECT_EQ(renamed.movements, plain.movements);
  EXPECT_EQ(renamed.compared, plain.compared);
  EXPECT_EQ(renamed.governing, plain.governing);
}

Names with_name(std::size_t thing, const std::string& name) {
  Names names = plain_names();
  names[thing] = name;
  return names;
}

// Each run takes a second; under sanitizers, which look for other faults, a few will do.
#ifdef __SANITIZE_ADDRESS__
constexpr std::size_t shift_step = 19;
#else
constexpr std::size_t shift_step = 1;
#endif

TEST(Names, OfEveryThingChangeNoNumberWhateverWordsTheyAre) {
  for (std::size_t shift = 0; shift < words().size(); shift += shift_step) {
    SCOPED_TRACE(fmt::format("every thing is called by the word {} after its own", shift));
    expect_same(shifted(shift), staged);
    if (HasFailure()) return;
  }
}

TEST(Names, ChangeNoNumberOfTheWallAtOnce) {
  for (std::size_t shift = 0; shift < words().size(); shift += 7) {
    SCOPED_TRACE(fmt::format("every thing is called by the word {} after its own", shift));
    expect_same(shifted(shift), at_once);
  }
}

TEST(Names, ChangeNoNumberOfCrackedMasonry) {
  for (const std::size_t shift : {0U, 20U}) expect_same(shifted(shift), cracked);
}

struct Renamed {
  std::size_t thing;
  const char* name;
};

class OneName : public ::testing::TestWithParam<Renamed> {};

TEST_P(OneName, ChangesNoNumber) {
  expect_same(with_name(GetParam().thing, GetParam().name), staged);
}

INSTANTIATE_TEST_SUITE_P(
    OfTheProgramsOwn, OneName,
    ::testing::Values(Renamed{needle, "packing"}, Renamed{needle, "left bearing"},
                      Renamed{other_needle, "left pier"}, Renamed{floor_of_house, "masonry"},
                      Renamed{partition, "masonry"}, Renamed{contents, "joists"},
                      Renamed{cut_stage, "cut out"}, Renamed{needle, "all"}));

TEST(Names, AStageCalledCutMayComeBeforeTheOneThatCuts) {
  Names names = plain_names();
  names[first_stage] = "cut";
  names[cut_stage] = "masonry out";
  expect_same(names, staged);
}

class Refused : public ::testing::TestWithParam<Renamed> {};

TEST_P(Refused, IsSaidInOneLine) {
  try {
    (void)parse_job(job_text(with_name(GetParam().thing, GetParam().name), staged), "yard.toml");
    FAIL() << "accepted";
  } catch (const InputError& error) {
    EXPECT_THAT(error.what(), HasSubstr("name"));
    EXPECT_THAT(error.what(), ::testing::Not(HasSubstr("\n")));
  }
}

INSTANTIATE_TEST_SUITE_P(
    BecauseTheyCannotWork, Refused,
    ::testing::Values(Renamed{door_lintel, "cut"}, Renamed{door_lintel, "pockets"},
                      Renamed{window_lintel, "cut"}, Renamed{cut_stage, "hand, full load"},
                      Renamed{needle, "N2"}, Renamed{needle, " N2 "}, Renamed{needle, "  "},
                      Renamed{roof, "floor"}, Renamed{first_stage, "cut"}));

}  // namespace
}  // namespace deadshore::io
