#include "io/job/job_wording.h"
#include "io/job/schema_pages.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <string>
#include <string_view>

namespace deadshore::io {

namespace {

using Json = nlohmann::ordered_json;

/// A number, and a unit after it that does not begin with another one.
Json quantity(const solver::Range& range = {}) {
  const std::string pattern =
      fmt::format(R"(^[ \t]*{}([0-9]+\.?[0-9]*|\.[0-9]+)([eE][+-]?[0-9]+)?[ \t]*[^-+0-9 \t/.,].*$)",
                  range.least >= 0.0 ? "[+]?" : "[+-]?");
  return {{"type", "string"}, {"pattern", pattern}};
}

Json list_of(Json entries, int least = 1) {
  return {{"type", "array"}, {"items", std::move(entries)}, {"minItems", least}};
}

Json pair_of_quantities() {
  Json pair = list_of(quantity(), 2);
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

Json number(const solver::Range& range) {
  Json limits = {{"type", "number"}};
  if (range.whole) limits["multipleOf"] = 1;
  if (std::isfinite(range.least)) {
    limits[range.above_least ? "exclusiveMinimum" : "minimum"] = range.least;
  }
  if (std::isfinite(range.most)) {
    limits[range.below_most ? "exclusiveMaximum" : "maximum"] = range.most;
  }
  return limits;
}

Json kind_of(const Key& key) {
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
      return {{"enum", words_of(key)}};
    case KeyKind::choices: {
      Json list = list_of({{"enum", words_of(key)}});
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

std::string description_of(const Key& key) {
  std::string text(key.meaning);
  if (const std::string range = range_of(key); !range.empty()) {
    text += fmt::format(" Range: {}.", range);
  }
  if (!key.unit.symbol.empty()) text += fmt::format(" Usual unit: {}.", key.unit.symbol);
  return text;
}

/// A value of TOML that is written in the same way in JSON.
Json value_of(const Key& key, std::string_view written) {
  return Json::parse(as_value(key, written));
}

Json schema_of(const Key& key) {
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
  for (const Key& key : table.keys) {
    properties[std::string(key.name)] = schema_of(key);
    if (key.need == Need::required) required.push_back(key.name);
  }
  for (const SchemaTable* inner : tables_in(table)) {
    properties[std::string(own_name(*inner))] = in_its_form(*inner);
    if (inner->required) required.push_back(own_name(*inner));
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
