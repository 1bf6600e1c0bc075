#include "io/job_table.h"

#include "io/error.h"
#include "io/job_wording.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <utility>

namespace deadshore::io {

namespace {

int line_of_node(const toml::node& node) {
  return static_cast<int>(node.source().begin.line);
}

std::string joined(const std::string& path, std::string_view key) {
  return path.empty() ? as_key(key) : path + "." + as_key(key);
}

/// The number that makes up the whole of `text`, if it is one.
std::optional<double> bare_number(std::string_view text) {
  double value = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return value;
}

std::vector<std::string_view> known_names(const SchemaTable& schema) {
  std::vector<std::string_view> names;
  for (const SchemaKey& key : schema.keys) names.push_back(key.name);
  if (schema.form != TableForm::root) return names;
  for (const SchemaTable& table : job_schema()) {
    if (table.form != TableForm::root) names.push_back(table.name);
  }
  return names;
}

}  // namespace

int JobSource::line_of(std::string path) const {
  while (true) {
    const auto found = lines_.find(path);
    if (found != lines_.end()) return found->second;
    const std::size_t last_step = path.find_last_of(".[");
    if (last_step == std::string::npos) return 1;
    path.resize(last_step);
  }
}

void JobSource::refuse(const std::string& path, const std::string& found,
                       const std::string& due) const {
  throw InputError(file_, line_of(path), path, found, due);
}

JobTable::JobTable(const toml::table& table, const SchemaTable& schema, std::string path,
                   JobSource& source)
    : table_(table), schema_(schema), path_(std::move(path)), source_(source) {
  for (const auto& [key, value] : table_) {
    source_.remember(path_of(key.str()), line_of_node(value));
  }
  refuse_unknown_keys();
}

void JobTable::refuse_unknown_keys() const {
  const std::vector<std::string_view> known = known_names(schema_);
  const toml::node* first = nullptr;
  std::string_view name;
  for (const auto& [key, value] : table_) {
    if (std::find(known.begin(), known.end(), key.str()) != known.end()) continue;
    if (first != nullptr && line_of_node(*first) <= line_of_node(value)) continue;
    first = &value;
    name = key.str();
  }
  if (first == nullptr) return;
  const bool table = first->is_table() || first->is_array_of_tables();
  refuse(name, fmt::format("a {} that is not known", table ? "table" : "key"),
         fmt::format("the nearest known one is \"{}\"", nearest_name(name, known)));
}

std::string JobTable::path_of(std::string_view key) const {
  return joined(path_, key);
}

bool JobTable::has(std::string_view key) const {
  return table_.contains(key);
}

const SchemaKey& JobTable::schema_key(std::string_view key) const {
  const SchemaKey* found = find_key(schema_, key);
  if (found == nullptr) throw std::out_of_range(fmt::format("no key {} in the schema", key));
  return *found;
}

const toml::node* JobTable::find(const SchemaKey& key) const {
  const toml::node* node = table_.get(key.name);
  if (node == nullptr && key.required) refuse(key.name, "nothing", due_for(key));
  return node;
}

std::string JobTable::string_of(const SchemaKey& key, const toml::node& node,
                                const std::string& path) const {
  const auto* text = node.as_string();
  if (text == nullptr) source_.refuse(path, describe(node), due_for(key));
  if (text->get().find_first_not_of(" \t\r\n") == std::string::npos) {
    source_.refuse(path, "an empty text", due_for(key));
  }
  return text->get();
}

std::string JobTable::text_or_fallback(const SchemaKey& key) const {
  const toml::node* node = find(key);
  return node == nullptr ? std::string(key.fallback) : string_of(key, *node, path_of(key.name));
}

std::string JobTable::text(std::string_view key) const {
  return text_or_fallback(schema_key(key));
}

std::string JobTable::choice(std::string_view key) const {
  const SchemaKey& known = schema_key(key);
  std::string text = text_or_fallback(known);
  const std::vector<std::string> all = split_choices(known.choices);
  if (std::find(all.begin(), all.end(), text) == all.end()) {
    refuse(key, in_quotes(text), due_for(known));
  }
  return text;
}

std::vector<std::string> JobTable::choices(std::string_view key) const {
  const SchemaKey& known = schema_key(key);
  const toml::node* node = find(known);
  if (node == nullptr) return split_choices(known.fallback);
  const toml::array* list = node->as_array();
  if (list == nullptr) refuse(key, describe(*node), due_for(known));
  if (list->empty()) refuse(key, "an empty list", due_for(known));
  const std::vector<std::string> all = split_choices(known.choices);
  std::vector<std::string> chosen;
  for (const toml::node& entry : *list) {
    const std::string path = fmt::format("{}[{}]", path_of(key), chosen.size());
    source_.remember(path, line_of_node(entry));
    std::string text = string_of(known, entry, path);
    if (std::find(all.begin(), all.end(), text) == all.end()) {
      source_.refuse(path, in_quotes(text), alternatives(known.choices) + " is due");
    }
    if (std::find(chosen.begin(), chosen.end(), text) != chosen.end()) {
      source_.refuse(path, in_quotes(text) + " twice", "each is due once at most");
    }
    chosen.push_back(std::move(text));
  }
  return chosen;
}

double JobTable::number(std::string_view key) const {
  const SchemaKey& known = schema_key(key);
  const toml::node* node = find(known);
  const std::optional<double> value =
      node != nullptr && node->is_number() ? node->value<double>() : std::nullopt;
  if (!value || !std::isfinite(*value)) {
    refuse(key, node == nullptr ? "nothing" : describe(*node), due_for(known));
  }
  return *value;
}

double JobTable::to_quantity(const SchemaKey& key, const std::string& text,
                             const std::string& path) const {
  if (const auto value = bare_number(text); value && std::isfinite(*value)) {
    source_.refuse(path, in_quotes(text) + ", a number without a unit",
                   "write the unit too: " + with_usual_unit(key, *value));
  }
  try {
    return source_.units().parse(text, key.dimension);
  } catch (const UnitError& error) {
    source_.refuse(path, fmt::format("{}, {}", in_quotes(text), error.what()), due_for(key));
  }
}

double JobTable::quantity_of(const SchemaKey& key, const toml::node& node,
                             const std::string& path) const {
  const std::optional<double> value = node.is_number() ? node.value<double>() : std::nullopt;
  if (value && std::isfinite(*value)) {
    source_.refuse(path, describe(node) + ", a number without a unit",
                   "write it between quotes with its unit: " + with_usual_unit(key, *value));
  }
  return to_quantity(key, string_of(key, node, path), path);
}

double JobTable::quantity(std::string_view key) const {
  const SchemaKey& known = schema_key(key);
  const toml::node* node = find(known);
  const std::string path = path_of(key);
  return node == nullptr ? to_quantity(known, std::string(known.fallback), path)
                         : quantity_of(known, *node, path);
}

std::optional<double> JobTable::quantity_unless_top(std::string_view key) const {
  const SchemaKey& known = schema_key(key);
  const toml::node* node = find(known);
  if (node->is_string() && node->as_string()->get() == "top") return std::nullopt;
  return quantity_of(known, *node, path_of(key));
}

std::vector<mesh::Point> JobTable::outline(std::string_view key) const {
  const SchemaKey& known = schema_key(key);
  const SchemaKey coordinate{.name = key,
                             .kind = KeyKind::quantity,
                             .dimension = Dimension::length,
                             .usual_unit = "m",
                             .example = "5.2 m"};
  const toml::node* node = find(known);
  const toml::array* list = node == nullptr ? nullptr : node->as_array();
  if (list == nullptr || list->size() < 2) {
    refuse(key, list == nullptr ? written(key) : "fewer than two points", due_for(known));
  }
  std::vector<mesh::Point> points;
  for (const toml::node& entry : *list) {
    const std::string path = fmt::format("{}[{}]", path_of(key), points.size());
    source_.remember(path, line_of_node(entry));
    const toml::array* pair = entry.as_array();
    if (pair == nullptr || pair->size() != 2) {
      source_.refuse(path, pair == nullptr ? describe(entry) : "a list that is not of two lengths",
                     R"(a point is due, such as ["3 m", "8 m"])");
    }
    const double x = quantity_of(coordinate, *pair->get(0), path + "[0]");
    const double y = quantity_of(coordinate, *pair->get(1), path + "[1]");
    points.push_back({x, y});
  }
  return points;
}

void JobTable::refuse(std::string_view key, const std::string& found,
                      const std::string& due) const {
  source_.refuse(path_of(key), found, due);
}

std::string JobTable::written(std::string_view key) const {
  const toml::node* node = table_.get(key);
  return node == nullptr ? "nothing" : describe(*node);
}

std::vector<NamedTable> find_tables(const toml::table& root, std::string_view name,
                                    JobSource& source) {
  const SchemaTable& schema = schema_table(name);
  const std::string path = as_key(name);
  const std::string due = fmt::format("{} is due", header_of(schema));
  const toml::node* node = root.get(name);
  if (node == nullptr) {
    if (schema.required) source.refuse(path, "nothing", due);
    return {};
  }
  source.remember(path, line_of_node(*node));
  std::vector<NamedTable> tables;
  const auto add = [&](const toml::node& entry, const std::string& entry_path, std::string label) {
    source.remember(entry_path, line_of_node(entry));
    const toml::table* table = entry.as_table();
    if (table == nullptr) source.refuse(entry_path, describe(entry), due);
    tables.push_back({std::move(label), JobTable(*table, schema, entry_path, source)});
  };
  if (schema.form == TableForm::single) {
    add(*node, path, "");
  } else if (schema.form == TableForm::named) {
    const toml::table* group = node->as_table();
    if (group == nullptr) source.refuse(path, describe(*node), due);
    for (const auto& [key, value] : *group) {
      if (key.str().empty()) source.refuse(joined(path, ""), "an empty name", due);
      add(value, joined(path, key.str()), std::string(key.str()));
    }
  } else {
    const toml::array* list = node->as_array();
    if (list == nullptr) {
      source.refuse(path, node->is_table() ? fmt::format("[{}]", name) : describe(*node), due);
    }
    for (const toml::node& entry : *list) {
      add(entry, fmt::format("{}[{}]", path, tables.size()), "");
    }
  }
  if (tables.empty() && schema.required) source.refuse(path, "nothing", due);
  return tables;
}

}  // namespace deadshore::io
