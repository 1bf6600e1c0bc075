#include "io/job/json_schema.h"

#include "io/job/job_wording.h"
#include "io/job/schema.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <charconv>
#include <string>
#include <string_view>

namespace deadshore::io {

namespace {

using Json = nlohmann::ordered_json;

bool is_never_negative(std::string_view range) {
  return range.starts_with("above 0") || range.starts_with("0 ") || range.starts_with("0,");
}

/// A number, and a unit after it that does not begin with another one.
std::string quantity_pattern(std::string_view range) {
  return fmt::format(
      R"(^[ \t]*{}([0-9]+\.?[0-9]*|\.[0-9]+)([eE][+-]?[0-9]+)?[ \t]*[^-+0-9 \t/.,].*$)",
      is_never_negative(range) ? "[+]?" : "[+-]?");
}

Json quantity(std::string_view range) {
  return {{"type", "string"}, {"pattern", quantity_pattern(range)}};
}

Json list_of(Json entries, int least = 1) {
  return {{"type", "array"}, {"items", std::move(entries)}, {"minItems", least}};
}

Json pair_of_quantities() {
  Json pair = list_of(quantity(""), 2);
  pair["maxItems"] = 2;
  return pair;
}

/// A material, alone or with what its weight needs.
Json layer() {
  const Json text = {{"type", "string"}, {"minLength", 1}};
  Json parts = list_of(text);
  parts["maxItems"] = 3;
  return {{"anyOf", {text, parts}}};
}

double leading_number(std::string_view text) {
  double value = 0.0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

/// The number that stands behind `words`, if they are in the range.
void add_limit(Json& limits, const char* name, std::string_view range, std::string_view words) {
  const std::size_t at = range.find(words);
  if (at != std::string_view::npos) limits[name] = leading_number(range.substr(at + words.size()));
}

/// What a range in words says to a machine; what it cannot say is left out.
Json number(std::string_view range) {
  if (range == "1 or 2") return {{"enum", {1, 2}}};
  Json limits = {{"type", "number"}};
  constexpr std::string_view whole = "a whole number, ";
  if (range.starts_with(whole)) {
    limits["multipleOf"] = 1;
    range.remove_prefix(whole.size());
  }
  if (!range.empty() && range.front() >= '0' && range.front() <= '9') {
    limits["minimum"] = leading_number(range);
  }
  add_limit(limits, "exclusiveMinimum", range, "above ");
  add_limit(limits, "exclusiveMaximum", range, " to below ");
  if (!limits.contains("exclusiveMaximum")) {
    add_limit(limits, "maximum", range, range.starts_with("above ") ? "up to " : " to ");
  }
  return limits;
}

Json choice_of(const SchemaKey& key) {
  return {{"enum", split_choices(key.choices)}};
}

Json kind_of(const SchemaKey& key) {
  switch (key.kind) {
    case KeyKind::text:
      return {{"type", "string"}, {"minLength", 1}};
    case KeyKind::number:
      return number(key.range);
    case KeyKind::quantity:
      return quantity(key.range);
    case KeyKind::quantity_or_top:
      return {{"anyOf", {{{"const", "top"}}, quantity(key.range)}}};
    case KeyKind::choice:
      return choice_of(key);
    case KeyKind::choices: {
      Json list = list_of(choice_of(key));
      list["uniqueItems"] = true;
      return list;
    }
    case KeyKind::texts:
      return list_of({{"type", "string"}, {"minLength", 1}}, 0);
    case KeyKind::quantities:
      return list_of(quantity(key.range));
    case KeyKind::outline:
    case KeyKind::stretches:
      return list_of(pair_of_quantities());
    case KeyKind::flag:
      return {{"type", "boolean"}};
    case KeyKind::layers:
      return list_of(layer());
  }
  return {};
}

std::string description_of(const SchemaKey& key) {
  std::string text(key.meaning);
  if (!key.range.empty()) text += fmt::format(" Range: {}.", key.range);
  if (!key.usual_unit.empty()) text += fmt::format(" Usual unit: {}.", key.usual_unit);
  return text;
}

/// A value of TOML that is written in the same way in JSON.
Json value_of(const SchemaKey& key, std::string_view written) {
  return Json::parse(as_value(key, written));
}

Json schema_of(const SchemaKey& key) {
  Json schema = {{"description", description_of(key)}};
  schema.update(kind_of(key));
  if (!key.fallback.empty()) schema["default"] = value_of(key, key.fallback);
  schema["examples"] = Json::array({value_of(key, example_of(key))});
  return schema;
}

Json schema_of(const SchemaTable& table);

/// The table as it stands in the one around it.
Json in_its_form(const SchemaTable& table) {
  switch (table.form) {
    case TableForm::root:
    case TableForm::single:
      return schema_of(table);
    case TableForm::named: {
      Json named = {{"description", table.meaning},
                    {"type", "object"},
                    {"additionalProperties", schema_of(table)}};
      if (table.required) named["minProperties"] = 1;
      return named;
    }
    case TableForm::list: {
      Json list = {{"description", table.meaning}};
      list.update(list_of(schema_of(table)));
      return list;
    }
  }
  return {};
}

/// One entry of the table: its keys and the tables inside it.
Json schema_of(const SchemaTable& table) {
  Json properties = Json::object();
  Json required = Json::array();
  for (const SchemaKey& key : table.keys) {
    properties[std::string(key.name)] = schema_of(key);
    if (key.required) required.push_back(key.name);
  }
  for (const SchemaTable& inner : job_schema()) {
    if (inner.form == TableForm::root || parent_of(inner) != table.name) continue;
    properties[std::string(own_name(inner))] = in_its_form(inner);
    if (inner.required) required.push_back(own_name(inner));
  }
  Json schema = {{"description", table.meaning}, {"type", "object"}};
  schema["properties"] = std::move(properties);
  if (!required.empty()) schema["required"] = std::move(required);
  schema["additionalProperties"] = false;
  return schema;
}

}  // namespace

std::string job_json_schema() {
  Json schema = {{"$schema", "https://json-schema.org/draft/2020-12/schema"},
                 {"title", "Deadshore job file"}};
  schema.update(schema_of(schema_table("")));
  return schema.dump(2) + "\n";
}

}  // namespace deadshore::io
