// Every key of the schema with values that it is not due to have, in a job that is sound otherwise.
#include "io/error.h"
#include "io/job/job_reader.h"
#include "io/job/job_table.h"
#include "io/job/schema.h"
#include "tests/io/core_keys.h"

#include <gtest/gtest.h>
#include <toml++/toml.h>

#include <algorithm>
#include <cmath>
#include <sstream>
#include <string>
#include <vector>

namespace deadshore::io {
namespace {

/// Sound jobs that have each table of the schema between them.
std::vector<std::string> samples() {
  std::vector<std::string> jobs;
  for (const char* name :
       {"core_keys.toml", "framed_keys.toml", "staged_keys.toml", "lift_keys.toml",
        "shored_keys.toml", "house_keys.toml", "../../../io/examples/kitchen_wall.toml"})
    jobs.push_back(test_data(name));
  jobs.push_back(core_keys() + "\n[removal]\ncourse_height = '75 mm'\n");
  const std::string with_capacity =
      with(framed_keys(), R"(prop           = "B35")",
           "prop = 'B35'\ncapacity = { source = 'sheet', extension = ['2 m', '3 m'], "
           "load = ['30 kN', '20 kN'] }");
  jobs.push_back(with(with_capacity, "[needle_frame.F1]",
                      "[needle_frame.F1]\npacking_thickness = '10 mm'\n"
                      "packing_E = '200 N/mm2'\npacking_strength = '3 N/mm2'"));
  return jobs;
}

/// The tables of a job that a schema's table describes: each entry of a list, each NAME.
std::vector<toml::table*> tables_for(toml::table& root, const SchemaTable& schema) {
  if (schema.form == TableForm::root) return {&root};
  std::vector<toml::table*> found;
  for (toml::table* around : tables_for(root, schema_table(parent_of(schema)))) {
    toml::node* node = around->get(own_name(schema));
    if (node == nullptr) continue;
    if (schema.form == TableForm::single && node->is_table()) found.push_back(node->as_table());
    if (schema.form == TableForm::named && node->is_table()) {
      for (auto& [name, value] : *node->as_table()) found.push_back(value.as_table());
    }
    if (schema.form == TableForm::list && node->is_array()) {
      for (toml::node& entry : *node->as_array()) found.push_back(entry.as_table());
    }
  }
  return found;
}

/// Numbers of the key's unit on either side of its range, and its ends where they are out.
std::vector<double> out_of(const Key& key) {
  const solver::Range& range = key.range;
  std::vector<double> out;
  for (const double end : {range.least, range.most}) {
    if (!std::isfinite(end)) continue;
    for (const double beside : {end - key.unit.size, end, end + key.unit.size})
      if (!range.holds(beside)) out.push_back(beside / key.unit.size);
  }
  return out;
}

/// What a key of any kind is not due to hold, and what this one is not, as TOML.
std::vector<std::string> wrong_values(const Key& key) {
  std::vector<std::string> wrong = {"1979-05-27", "{ a = 1 }", "[[[1]]]", "[{}]"};
  const auto add = [&](std::initializer_list<const char*> values) {
    wrong.insert(wrong.end(), values.begin(), values.end());
  };
  if (key.kind != KeyKind::number) add({"42", "nan"});
  if (key.kind != KeyKind::flag) add({"true"});
  if (key.kind != KeyKind::text) add({"'no such thing'"});
  switch (key.kind) {
    case KeyKind::text:
      wrong.push_back("'" + std::string(1000, 'x') + "'");
      add({"''", "'  '", R"("a\u0007b")", R"("a\u202Eb")", R"("a\nb")", "[]"});
      break;
    case KeyKind::number:
      add({"nan", "inf", "-inf", "1e300", "1e-300", "'1'", "[]"});
      for (const double value : out_of(key)) wrong.push_back(std::to_string(value));
      break;
    case KeyKind::quantity:
    case KeyKind::quantity_or_top:
      add({"'3'", "'3 K'", "'nan mm'", "'inf kN'", "'3 parsnips'", "''", "'mm'", "[]"});
      for (const char* number : {"1e300 ", "1e-300 ", "0x10 ", "1,5 "})
        wrong.push_back("'" + std::string(number) + std::string(key.unit.symbol) + "'");
      for (const double value : out_of(key))
        wrong.push_back("'" + std::to_string(value) + " " + std::string(key.unit.symbol) + "'");
      break;
    case KeyKind::choice:
      add({"''", "[]"});
      break;
    case KeyKind::choices:
      add({"[]", "['no such thing']", "[1]"});
      break;
    case KeyKind::texts:
    case KeyKind::quantities:
    case KeyKind::layers:
      add({"[1]", "['']", "[[]]"});
      break;
    case KeyKind::outline:
    case KeyKind::stretches:
      add({"[]", "[1]", "[['1 m']]", "[[1, 2]]", "[['1 m', '2 kN']]", "[['1 m', '2 m', '3 m']]"});
      break;
    case KeyKind::flag:
      add({"'true'", "1", "[]"});
  }
  return wrong;
}

std::string text_of(const toml::table& job) {
  std::ostringstream text;
  text << job << '\n';
  return text.str();
}

std::string line_of(const std::string& text, int number) {
  std::istringstream lines(text);
  std::string line;
  for (int i = 0; i < number; ++i) std::getline(lines, line);
  return line;
}

struct BadValue {
  std::string table;
  const Key* key = nullptr;
  std::string value;
};

/// Refused in one line that names file, line and key, and the line is where the value is.
void expect_refused(const std::string& text, const BadValue& bad) {
  try {
    static_cast<void>(parse_job(text, "yard.toml"));
    ADD_FAILURE() << bad.table << "." << bad.key->name << " = " << bad.value << " is accepted";
  } catch (const InputError& error) {
    const std::string what = error.what();
    SCOPED_TRACE(what);
    EXPECT_NE(error.key().find(bad.key->name), std::string::npos) << bad.value;
    EXPECT_EQ(what.rfind("yard.toml:", 0), 0U);
    EXPECT_EQ(what.find('\n'), std::string::npos);
    EXPECT_NE(line_of(text, error.line()).find(bad.key->name), std::string::npos)
        << "line " << error.line() << " is \"" << line_of(text, error.line()) << "\"";
  }
}

/// The sample that has the key itself, or else its table.
std::string sample_for(const SchemaTable& schema, const Key& key) {
  std::string second;
  for (const std::string& job : samples()) {
    toml::table root = toml::parse(job);
    for (const toml::table* table : tables_for(root, schema)) {
      if (table->contains(key.name)) return job;
      if (second.empty()) second = job;
    }
  }
  return second;
}

void expect_key_guarded(const SchemaTable& schema, const Key& key) {
  const std::string sample = sample_for(schema, key);
  ASSERT_FALSE(sample.empty()) << "no sample has [" << schema.name << "]";
  const toml::table sound = toml::parse(sample);
  for (const std::string& value : wrong_values(key)) {
    toml::table job = sound;
    const std::vector<toml::table*> tables = tables_for(job, schema);
    const auto with_key = std::ranges::find_if(
        tables, [&](const toml::table* table) { return table->contains(key.name); });
    toml::table& table = with_key == tables.end() ? *tables.front() : **with_key;
    const toml::table parsed = toml::parse("value = " + value);
    table.insert_or_assign(key.name, *parsed.get("value"));
    expect_refused(text_of(job), {std::string(schema.name), &key, value});
  }
}

class HostileKeys : public ::testing::TestWithParam<std::size_t> {};

TEST_P(HostileKeys, AreRefusedByFileLineAndKey) {
  const SchemaTable& schema = job_schema()[GetParam()];
  for (const Key& key : schema.keys) expect_key_guarded(schema, key);
}

INSTANTIATE_TEST_SUITE_P(Schema, HostileKeys, ::testing::Range(std::size_t{0}, job_schema().size()),
                         [](const auto& entry) {
                           std::string name(job_schema()[entry.param].name);
                           std::ranges::replace(name, '.', '_');
                           return name.empty() ? std::string("top") : name;
                         });

}  // namespace
}  // namespace deadshore::io
