#include "io/job/schema.h"

#include <gtest/gtest.h>

#include <array>
#include <stdexcept>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

TEST(Schema, EveryKeySaysWhatItIs) {
  for (const SchemaTable& table : job_schema()) {
    EXPECT_TRUE(table.meaning.ends_with('.')) << table.name;
    for (const SchemaKey& key : table.keys) {
      const std::string where = std::string(table.name) + "." + std::string(key.name);
      EXPECT_TRUE(key.meaning.ends_with('.')) << where;
      EXPECT_FALSE(key.required && !key.fallback.empty()) << where;
      EXPECT_EQ(key.kind == KeyKind::choice || key.kind == KeyKind::choices, !key.choices.empty())
          << where;
    }
  }
}

TEST(Schema, EveryExampleAndDefaultIsAQuantityOfItsDimension) {
  const Units units;
  for (const SchemaTable& table : job_schema()) {
    for (const SchemaKey& key : table.keys) {
      if (key.kind != KeyKind::quantity && key.kind != KeyKind::quantity_or_top) continue;
      EXPECT_NO_THROW(static_cast<void>(units.parse(key.example, key.dimension))) << key.name;
      EXPECT_NO_THROW(
          static_cast<void>(units.parse("1 " + std::string(key.usual_unit), key.dimension)))
          << key.name;
      if (key.fallback.empty()) continue;
      EXPECT_NO_THROW(static_cast<void>(units.parse(key.fallback, key.dimension))) << key.name;
    }
  }
}

TEST(Schema, EveryTableIsInsideAnother) {
  for (const SchemaTable& table : job_schema()) {
    EXPECT_NO_THROW(static_cast<void>(schema_table(parent_of(table)))) << table.name;
  }
  EXPECT_EQ(parent_of(schema_table("needle_frame.prop")), "needle_frame");
  EXPECT_EQ(own_name(schema_table("needle_frame.prop")), "prop");
  EXPECT_EQ(parent_of(schema_table("wall")), "");
}

TEST(Schema, TablesAndKeysAreFoundByName) {
  EXPECT_EQ(schema_table("needle").form, TableForm::list);
  EXPECT_NE(find_key(schema_table("needle"), "slack"), nullptr);
  EXPECT_EQ(find_key(schema_table("needle"), "slak"), nullptr);
  EXPECT_THROW(static_cast<void>(schema_table("nail")), std::out_of_range);
}

TEST(NearestName, IsTheOneWithFewestLettersToMend) {
  const std::vector<std::string_view> known = {"left", "right", "soffit", "stiffness"};
  EXPECT_EQ(nearest_name("rigth", known), "right");
  EXPECT_EQ(nearest_name("sofit", known), "soffit");
  EXPECT_EQ(nearest_name("stifness", known), "stiffness");
  EXPECT_EQ(nearest_name("Left", known), "left");
}

TEST(NearestName, CountsSwappedNeighboursAsOneChange) {
  const std::array<std::string_view, 2> known = {"abxx", "ba"};
  EXPECT_EQ(nearest_name("ab", known), "ba");
}

}  // namespace
}  // namespace deadshore::io
