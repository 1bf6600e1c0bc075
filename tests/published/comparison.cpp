#include "tests/published/comparison.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <array>
#include <limits>

namespace deadshore::published {
namespace {

using Json = nlohmann::json;

constexpr std::array<std::string_view, field_count> titles = {
    "Plane stress",
    "Masonry without tension",
    "Limit analysis",
    "Whole walls on needles, in an independent library",
    "Frames: beams and elastic foundations",
    "Frames: beam-columns, second order",
    "Frames: buckling",
    "Frames: portals",
    "Steel sections",
    "Steel members, EN 1993",
    "Timber and its fasteners, EN 1995",
    "Masonry members, EN 1996",
    "Props",
    "The permanent beam",
    "Dead shores",
    "Take-down, weights and combinations",
    "Damage and practice",
};

constexpr std::array<std::string_view, 7> certainties = {
    "exact, derived",
    "read in a public copy",
    "worked by hand from its formulas",
    "from memory, unverified",
    "library, run by us",
    "older code of our own: weak",
    "common practice, no source",
};

constexpr std::string_view property = "compared: ";

/// JSON has no infinity.
Json finite_or_null(double value) {
  return value == std::numeric_limits<double>::infinity() ? Json(nullptr) : Json(value);
}

double number(const Json& value) {
  return value.is_null() ? std::numeric_limits<double>::infinity() : value.get<double>();
}

std::string noted(const Comparison& c) {
  return Json{static_cast<int>(c.source.field),
              static_cast<int>(c.source.certainty),
              c.source.citation,
              c.theirs,
              c.ours,
              finite_or_null(c.tolerance.below),
              finite_or_null(c.tolerance.above),
              c.unit}
      .dump();
}

Row row_of(std::string_view what, const char* note) {
  const Json json = Json::parse(note);
  return {static_cast<Field>(json[0].get<int>()),
          static_cast<Certainty>(json[1].get<int>()),
          json[2],
          std::string(what),
          json[3],
          json[4],
          number(json[5]),
          number(json[6]),
          json[7]};
}

}  // namespace

std::string_view title_of(Field field) {
  return titles.at(static_cast<std::size_t>(field));
}

std::string_view words_for(Certainty certainty) {
  return certainties.at(static_cast<std::size_t>(certainty));
}

void verify(const Comparison& comparison, std::source_location where) {
  ::testing::Test::RecordProperty(fmt::format("{}{}", property, comparison.what),
                                  noted(comparison));
  const double difference = comparison.ours - comparison.theirs;
  const auto& [below, above] = comparison.tolerance;
  if (difference >= -below && difference <= above) return;
  ADD_FAILURE_AT(where.file_name(), static_cast<int>(where.line()))
      << fmt::format("{}: found {:.10g} {}, {} has {:.10g}; accepted -{:.4g} to +{:.4g}",
                     comparison.what, comparison.ours, comparison.unit, comparison.source.citation,
                     comparison.theirs, below, above);
}

std::vector<Row> rows_of(const ::testing::UnitTest& tests) {
  std::vector<Row> rows;
  for (int s = 0; s < tests.total_test_suite_count(); ++s) {
    const ::testing::TestSuite& suite = *tests.GetTestSuite(s);
    for (int t = 0; t < suite.total_test_count(); ++t) {
      const ::testing::TestResult& result = *suite.GetTestInfo(t)->result();
      for (int p = 0; p < result.test_property_count(); ++p) {
        const ::testing::TestProperty& found = result.GetTestProperty(p);
        const std::string_view key = found.key();
        if (key.starts_with(property))
          rows.push_back(row_of(key.substr(property.size()), found.value()));
      }
    }
  }
  return rows;
}

}  // namespace deadshore::published
