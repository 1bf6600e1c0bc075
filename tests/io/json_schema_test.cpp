#include "io/job/schema.h"
#include "io/job/schema_pages.h"
#include "tests/io/core_keys.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <toml++/toml.h>

#include <algorithm>
#include <fstream>
#include <regex>
#include <sstream>
#include <string>

namespace deadshore::io {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

json from_toml(const std::string& text) {
  std::ostringstream out;
  const toml::table table = toml::parse(text);
  out << toml::json_formatter(table);
  return json::parse(out.str());
}

std::string file_text(const std::string& path) {
  std::ostringstream text;
  text << std::ifstream(DEADSHORE_SOURCE_DIR "/" + path, std::ios::binary).rdbuf();
  return text.str();
}

std::string fault(const json& value, const json& schema, const std::string& path);

std::string fault_of_table(const json& value, const json& schema, const std::string& path) {
  const json known = schema.value("properties", json::object());
  for (const auto& [key, entry] : value.items()) {
    const json due = known.contains(key) ? known.at(key) : schema.at("additionalProperties");
    if (due == json(false)) return path + "." + key + " is not known";
    if (std::string found = fault(entry, due, path + "." + key); !found.empty()) return found;
  }
  if (value.size() < schema.value("minProperties", 0U)) return path + " is empty";
  const json required = schema.value("required", json::array());
  for (const json& key : required) {
    if (!value.contains(key.get<std::string>()))
      return path + "." + key.get<std::string>() + " is missing";
  }
  return "";
}

std::string fault_of_list(const json& value, const json& schema, const std::string& path) {
  if (value.size() < schema.value("minItems", 0U)) return path + " is too short";
  if (value.size() > schema.value("maxItems", value.size())) return path + " is too long";
  for (const json& entry : value) {
    if (std::string found = fault(entry, schema.at("items"), path); !found.empty()) return found;
  }
  return "";
}

std::string fault_of_number(double value, const json& schema, const std::string& path) {
  const bool low =
      (schema.contains("minimum") && value < schema.at("minimum").get<double>()) ||
      (schema.contains("exclusiveMinimum") && value <= schema.at("exclusiveMinimum").get<double>());
  const bool high =
      (schema.contains("maximum") && value > schema.at("maximum").get<double>()) ||
      (schema.contains("exclusiveMaximum") && value >= schema.at("exclusiveMaximum").get<double>());
  return low || high ? path + " is out of range" : "";
}

std::string fault_of_text(const json& value, const json& schema, const std::string& path) {
  if (!schema.contains("pattern"))
    return value.get<std::string>().empty() ? path + " is empty" : "";
  const std::regex pattern(schema.at("pattern").get<std::string>());
  return std::regex_search(value.get<std::string>(), pattern) ? "" : path + " is not a quantity";
}

/// What is wrong by the words of draft 2020-12 that the schema uses; empty where nothing is.
std::string fault(const json& value, const json& schema, const std::string& path) {
  if (schema.contains("const")) return value == schema.at("const") ? "" : path + " is another word";
  if (schema.contains("anyOf")) {
    const json& ways = schema.at("anyOf");
    const bool one = std::any_of(ways.begin(), ways.end(),
                                 [&](const json& way) { return fault(value, way, path).empty(); });
    return one ? "" : path + " is none of the kinds";
  }
  if (schema.contains("enum")) {
    const json& choices = schema.at("enum");
    return std::find(choices.begin(), choices.end(), value) != choices.end()
               ? ""
               : path + " is none of the choices";
  }
  const std::string type = schema.at("type").get<std::string>();
  const bool fits = type == value.type_name();
  if (!fits) return path + " is no " + type;
  if (type == "boolean") return "";
  if (type == "object") return fault_of_table(value, schema, path);
  if (type == "array") return fault_of_list(value, schema, path);
  return type == "number" ? fault_of_number(value.get<double>(), schema, path)
                          : fault_of_text(value, schema, path);
}

class JsonSchema : public ::testing::Test {
 protected:
  std::string fault_in(const std::string& job) const {
    return fault(from_toml(job), schema, "job");
  }
  const json schema = json::parse(job_json_schema());
};

TEST_F(JsonSchema, TakesTheExamplesAndTheStarter) {
  for (const char* name :
       {"garden_wall.toml", "kitchen_wall.toml", "awkward_bay.toml", "gable_chimney.toml"}) {
    EXPECT_THAT(fault_in(file_text(std::string("io/examples/") + name)), IsEmpty()) << name;
  }
  for (const char* name : {"core_keys.toml", "framed_keys.toml", "staged_keys.toml",
                           "shored_keys.toml", "lift_keys.toml", "house_keys.toml"}) {
    EXPECT_THAT(fault_in(test_data(name)), IsEmpty()) << name;
  }
  EXPECT_THAT(fault_in(starter_job()), IsEmpty());
}

TEST_F(JsonSchema, RefusesWhatTheProgramRefuses) {
  const std::string job = core_keys();
  ASSERT_EQ(fault_in(job), "");
  EXPECT_EQ(fault_in(with(job, "soffit", "sofit")), "job.cut.sofit is not known");
  EXPECT_EQ(fault_in(with(job, "soffit = \"2.4 m\"", "")), "job.cut.soffit is missing");
  EXPECT_EQ(fault_in(with(job, "\"held\"", "\"hold\"")),
            "job.wall.left_end is none of the choices");
  EXPECT_EQ(fault_in(with(job, "\"215 mm\"", "\"215\"")), "job.wall.thickness is not a quantity");
  EXPECT_EQ(fault_in(with(job, "\"215 mm\"", "\"-215 mm\"")),
            "job.wall.thickness is not a quantity");
  EXPECT_EQ(fault_in(with(job, "\"215 mm\"", "215")), "job.wall.thickness is no string");
  EXPECT_THAT(fault_in(with(job, "= 0.2", "= 0.5")), HasSubstr(".nu is out of range"));
}

TEST_F(JsonSchema, TakesEveryExampleAndDefaultOfTheSchema) {
  for (const SchemaTable& table : job_schema()) {
    const json* place = &schema;
    std::istringstream steps{std::string(table.name)};
    for (std::string step; std::getline(steps, step, '.');) {
      place = &place->at("properties").at(step);
      if (place->contains("items")) place = &place->at("items");
      if (!place->contains("properties")) place = &place->at("additionalProperties");
    }
    for (const Key& key : table.keys) {
      const json& entry = place->at("properties").at(std::string(key.name));
      const json examples = entry.at("examples");
      for (const json& example : examples) {
        EXPECT_EQ(fault(example, entry, std::string(key.name)), "") << table.name;
      }
      if (entry.contains("default")) {
        EXPECT_EQ(fault(entry.at("default"), entry, std::string(key.name)), "") << table.name;
      }
      EXPECT_THAT(entry.at("description").get<std::string>(), HasSubstr(std::string(key.meaning)));
    }
  }
}

TEST_F(JsonSchema, SaysInNumbersWhatRangesSayInWords) {
  const json tables = schema.at("properties");
  const json nu = tables.at("masonry").at("additionalProperties").at("properties").at("nu");
  EXPECT_EQ(nu.at("minimum"), 0);
  EXPECT_EQ(nu.at("exclusiveMaximum"), 0.5);
  const json share = tables.at("dead_shore").at("items").at("properties").at("share");
  EXPECT_EQ(share.at("minimum"), 0);
  EXPECT_EQ(share.at("maximum"), 1);
  EXPECT_EQ(tables.at("checks").at("properties").at("gamma_G").at("exclusiveMinimum"), 0);
  const json count = tables.at("beam").at("properties").at("count");
  EXPECT_EQ(count.at("minimum"), 1);
  EXPECT_EQ(count.at("maximum"), 2);
  EXPECT_EQ(count.at("multipleOf"), 1);
}

TEST_F(JsonSchema, NamesItsDraft) {
  EXPECT_EQ(schema.at("$schema"), "https://json-schema.org/draft/2020-12/schema");
}

}  // namespace
}  // namespace deadshore::io
