#include "io/job/schema_pages.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>
#include <stdexcept>
#include <string>

namespace deadshore::io {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

TEST(KeyReference, ExplainsEveryKeyOfEveryTable) {
  for (const SchemaTable& table : job_schema()) {
    const std::string text = reference_of(table);
    for (const Key& key : table.keys) {
      EXPECT_THAT(text, HasSubstr("\n  " + std::string(key.name) + " ")) << table.name;
      EXPECT_THAT(text, HasSubstr("\n      " + std::string(key.name) + " = ")) << table.name;
    }
  }
}

TEST(KeyReference, GivesUnitDefaultRangeAndExample) {
  const std::string text = key_reference("needle");
  EXPECT_THAT(text, HasSubstr("[[needle]]  required, once for each\n"));
  EXPECT_THAT(text, HasSubstr("  slack                 mm                 default \"0 mm\"\n"
                              "      Gap to close before the needle bears. Range: 0 or more.\n"
                              "      slack = \"2 mm\"\n"));
  EXPECT_THAT(text, Not(HasSubstr("\n[needle_frame.NAME]")));
}

TEST(KeyReference, ATableComesWithThoseInsideIt) {
  const std::string text = key_reference("needle_frame");
  EXPECT_THAT(text, HasSubstr("[needle_frame.NAME]"));
  EXPECT_THAT(text, HasSubstr("[[needle_frame.NAME.prop]]"));
  EXPECT_THAT(text, Not(HasSubstr("[wall]")));
  EXPECT_THAT(key_reference("top"), HasSubstr("title = "));
}

TEST(KeyReference, FitsEightyColumns) {
  std::istringstream lines(key_reference(""));
  for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 80U) << line;
}

TEST(KeyReference, AnUnknownTableIsAnsweredWithTheNearest) {
  try {
    (void)key_reference("neeedle");
    FAIL() << "explained";
  } catch (const std::invalid_argument& error) {
    EXPECT_THAT(error.what(), HasSubstr("the nearest one is \"needle\""));
  }
}

}  // namespace
}  // namespace deadshore::io
