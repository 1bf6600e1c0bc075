#include "io/commands/terminal.h"
#include "io/job/job_wording.h"
#include "io/job/schema_pages.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <span>
#include <string_view>
#include <vector>

namespace deadshore::io {

namespace {

constexpr std::size_t comment_column = 36;
constexpr std::size_t comment_width = 80 - comment_column - 2;

struct Value {
  std::string_view key;
  std::string_view written;  ///< as the schema writes it, without quotes
};

/// A table of the starter. Keys that are due and not given here take the schema's example.
struct Table {
  std::string_view name;    ///< in the schema
  std::string_view header;  ///< as it stands in the file
  std::vector<Value> values;
};

/// An invented wall: a garden door is made into a wide opening under a pair of beams.
std::vector<Table> invented_wall() {
  return {
      {"", "", {{"title", "My wall (invented)"}}},
      {"title_block",
       "[title_block]",
       {{"project", "My house (invented)"}, {"reference", "TW-01"}, {"revision", "A"}}},
      {"wall",
       "[wall]",
       {{"length", "5 m"},
        {"height", "4.9 m"},
        {"thickness", "215 mm"},
        {"masonry", "brick"},
        {"left_end", "held"},
        {"right_end", "held"}}},
      {"masonry", "[masonry.brick]", {}},
      {"opening",
       "[[opening]]",
       {{"name", "upstairs window"},
        {"left", "2 m"},
        {"sill", "3.4 m"},
        {"width", "1 m"},
        {"height", "1 m"}}},
      {"lintel",
       "[[lintel]]",
       {{"name", "window lintel"}, {"opening", "upstairs window"}, {"material", "concrete"}}},
      {"cut", "[cut]", {{"left", "1.4 m"}, {"right", "3.6 m"}, {"soffit", "2.3 m"}}},
      {"line_load",
       "[[line_load]]",
       {{"name", "first floor"},
        {"level", "2.6 m"},
        {"dead", "1.2 kN/m"},
        {"imposed", "2.6 kN/m"}}},
      {"line_load",
       "[[line_load]]",
       {{"name", "roof"}, {"level", "top"}, {"dead", "3 kN/m"}, {"imposed", "1.6 kN/m"}}},
      {"needle",
       "[[needle]]",
       {{"name", "N1"}, {"x", "1.75 m"}, {"frame", "F1"}, {"preload", "5 kN"}}},
      {"needle",
       "[[needle]]",
       {{"name", "N2"}, {"x", "2.5 m"}, {"frame", "F1"}, {"preload", "8 kN"}}},
      {"needle",
       "[[needle]]",
       {{"name", "N3"}, {"x", "3.25 m"}, {"frame", "F1"}, {"preload", "5 kN"}}},
      {"needle_frame", "[needle_frame.F1]", {{"section", "UC 203x203x46"}, {"grade", "S275"}}},
      {"needle_frame.prop",
       "[[needle_frame.F1.prop]]",
       {{"side", "outside"},
        {"distance", "600 mm"},
        {"prop", "B35"},
        {"sole_timber", "D30"},
        {"ground", "stiff clay"}}},
      {"needle_frame.prop",
       "[[needle_frame.F1.prop]]",
       {{"side", "inside"},
        {"distance", "600 mm"},
        {"prop", "B35"},
        {"sole_timber", "D30"},
        {"ground", "stiff clay"}}},
      {"beam",
       "[beam]",
       {{"section", "UB 203x102x23"}, {"grade", "S275"}, {"count", "2"}, {"bearing", "150 mm"}}},
      {"beam.padstone", "[beam.padstone]", {{"length", "440 mm"}, {"depth", "215 mm"}}},
      {"beam.packing", "[beam.packing]", {{"thickness", "20 mm"}}},
      {"analysis", "[analysis]", {{"mesh", "100 mm"}}},
  };
}

/// The values given, and the examples of what else is due, in the schema's order.
std::vector<Value> values_of(const Table& table) {
  std::vector<Value> values;
  for (const Key& key : schema_table(table.name).keys) {
    const auto given = std::ranges::find(table.values, key.name, &Value::key);
    if (given != table.values.end()) {
      values.push_back(*given);
    } else if (key.need == Need::required) {
      values.push_back({key.name, example_of(key)});
    }
  }
  return values;
}

/// `code` with a comment beside it that goes on below.
std::string commented(std::string code, std::string_view comment) {
  std::string text;
  for (const std::string& line : broken(comment, comment_width)) {
    if (code.size() + 1 > comment_column) {
      text += code + "\n";
      code.clear();
    }
    text += fmt::format("{:<{}}# {}\n", code, comment_column, line);
    code.clear();
  }
  return text;
}

/// The keys that the table may also hold.
std::string other_keys(const SchemaTable& schema, std::span<const Value> values) {
  std::vector<std::string_view> others;
  for (const Key& key : schema.keys) {
    if (std::ranges::find(values, key.name, &Value::key) == values.end()) {
      others.push_back(key.name);
    }
  }
  if (others.empty()) return "";
  std::string text;
  for (const std::string& line : broken(fmt::format("Also: {}.", fmt::join(others, ", ")), 78)) {
    text += fmt::format("# {}\n", line);
  }
  return text;
}

std::string written(const Table& table, bool is_first) {
  const SchemaTable& schema = schema_table(table.name);
  const std::vector<Value> values = values_of(table);
  std::size_t width = 0;
  for (const Value& value : values) width = std::max(width, value.key.size());

  std::string text;
  const std::string header(table.header);
  if (!header.empty()) text += is_first ? commented(header, schema.meaning) : header + "\n";
  for (const Value& value : values) {
    const Key& key = *find_key(schema, value.key);
    const std::string code =
        fmt::format("{:<{}} = {}", key.name, width, as_value(key, value.written));
    text += is_first ? commented(code, key.meaning) : code + "\n";
  }
  return is_first ? text + other_keys(schema, values) : text;
}

constexpr std::string_view foreword =
    "# A starting point for a job: an invented wall, to be changed into yours. Every\n"
    "# quantity is a string with its unit. `deadshore keys TABLE` explains every key\n"
    "# of a table, `deadshore sections`, `props`, `timber` and `ground` list what may\n"
    "# be named, and `deadshore check FILE` says whether the job makes sense.\n"
    "# The wall's real sizes, loads and ground come from the site, not from here; a\n"
    "# structural engineer checks them and what comes out.\n";

}  // namespace

std::string starter_job() {
  const std::vector<Table> tables = invented_wall();
  std::string text(foreword);
  std::vector<std::string_view> seen;
  for (const Table& table : tables) {
    const bool is_first = std::ranges::find(seen, table.name) == seen.end();
    text += "\n" + written(table, is_first);
    seen.push_back(table.name);
  }
  text += "\n# What else a job may hold:\n";
  for (const SchemaTable& schema : job_schema()) {
    if (std::ranges::find(seen, schema.name) != seen.end()) continue;
    text += commented("# " + header_of(schema), schema.meaning);
  }
  return text;
}

}  // namespace deadshore::io
