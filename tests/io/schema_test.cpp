#include "io/job/schema.h"

#include "io/job/units.h"

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
    for (const Key& key : table.keys) {
      const std::string where = std::string(table.name) + "." + std::string(key.name);
      EXPECT_TRUE(key.meaning.ends_with('.')) << where;
      EXPECT_EQ(key.need == Need::with_default, !key.fallback.empty()) << where;
      EXPECT_EQ(key.kind == KeyKind::choice || key.kind == KeyKind::choices, !key.words.empty())
          << where;
      EXPECT_EQ(key.example.empty(), !key.words.empty()) << where;
    }
  }
}

TEST(Schema, EveryExampleAndDefaultIsAQuantityOfItsDimension) {
  const Units units;
  for (const SchemaTable& table : job_schema()) {
    for (const Key& key : table.keys) {
      if (key.kind != KeyKind::quantity && key.kind != KeyKind::quantity_or_top) continue;
      EXPECT_NO_THROW(static_cast<void>(units.parse(key.example, key.unit.dimension))) << key.name;
      if (key.fallback.empty()) continue;
      EXPECT_NO_THROW(static_cast<void>(units.parse(key.fallback, key.unit.dimension))) << key.name;
    }
  }
}

// Against the sizes of the UDUNITS-2 database.
TEST(Schema, EveryUnitHasItsSize) {
  const Units units;
  int quantities = 0;
  for (const SchemaTable& table : job_schema()) {
    for (const Key& key : table.keys) {
      if (key.unit.symbol.empty()) continue;
      ++quantities;
      EXPECT_DOUBLE_EQ(units.parse("1 " + std::string(key.unit.symbol), key.unit.dimension),
                       key.unit.size)
          << table.name << "." << key.name;
    }
  }
  EXPECT_GT(quantities, 100);
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
