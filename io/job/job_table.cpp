#include "io/job/job_table.h"

#include "io/error.h"
#include "io/job/job_limits.h"
#include "io/job/job_wording.h"
#include "io/job/unprintable.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <utility>

namespace deadshore::io {

namespace {

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

/// Refuses what is too long, or holds a character that would not show where the text is printed.
void refuse_unfit_text(const JobSource& source, const std::string& path, std::string_view text,
                       std::size_t longest) {
  if (text.size() > longest) {
    source.refuse(path, fmt::format("a text of {} bytes", text.size()),
                  fmt::format("at most {} are due", longest));
  }
  if (const std::string sign = first_unprintable(text); !sign.empty()) {
    source.refuse(path, fmt::format("a text with {}, which does not print", sign),
                  "one line of characters that print is due");
  }
}

std::vector<std::string_view> known_names(const SchemaTable& schema) {
  std::vector<std::string_view> names;
  for (const SchemaKey& key : schema.keys) names.push_back(key.name);
  for (const SchemaTable& table : job_schema()) {
    if (table.form != TableForm::root && parent_of(table) == schema.name) {
      names.push_back(own_name(table));
    }
  }
  return names;
}

}  // namespace

int line_of_node(const toml::node& node) {
  return static_cast<int>(node.source().begin.line);
}

int JobSource::line_of(std::string path) const {
  while (true) {
    const auto found = lines_.find(path);
    if (found != lines_.end()) return found->second;
    const std::size_t last_step = path.find_last_of(".[");
    if (last_step == std::string::npos) return 1;
    path.resize(last_step);
  }
}

std::string JobSource::path_in_file(const std::string& key) const {
  for (std::size_t end = key.size(); end != std::string::npos && end > 0;
       end = key.find_last_of(".[", end - 1)) {
    const auto found = places_.find(key.substr(0, end));
    if (found != places_.end()) return found->second + key.substr(end);
  }
  return key;
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

std::string JobTable::one_of(std::string_view keys) const {
  const std::vector<std::string> all = split_choices(keys);
  const std::string due = alternatives(keys) + " is due";
  std::string found;
  for (const std::string& key : all) {
    if (!has(key)) continue;
    if (!found.empty()) {
      refuse(key, fmt::format("{} beside {}", written(key), in_quotes(found)), due + ", not both");
    }
    found = key;
  }
  if (found.empty()) refuse(all.front(), "nothing", due);
  return found;
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
  if (key.kind == KeyKind::text || key.kind == KeyKind::texts) {
    refuse_unfit_text(source_, path, text->get(), key.name == "name" ? longest_name : longest_text);
  }
  return text->get();
}

std::string JobTable::text_or_fallback(const SchemaKey& key) const {
  const toml::node* node = find(key);
  if (node != nullptr) return string_of(key, *node, path_of(key.name));
  if (key.fallback.empty()) refuse(key.name, "nothing", due_for(key));
  return std::string(key.fallback);
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

double JobTable::number(std::string_view key) const {
  const SchemaKey& known = schema_key(key);
  const toml::node* node = find(known);
  if (node == nullptr && !known.fallback.empty()) return bare_number(known.fallback).value();
  const std::optional<double> value =
      node != nullptr && node->is_number() ? node->value<double>() : std::nullopt;
  if (!value || !std::isfinite(*value)) {
    refuse(key, node == nullptr ? "nothing" : describe(*node), due_for(known));
  }
  if (!number_magnitudes.hold(*value)) {
    refuse(key, describe(*node) + ", beyond all that is reckoned with",
           fmt::format("a number of {} is due, or 0", number_magnitudes.in_words));
  }
  return *value;
}

bool JobTable::flag(std::string_view key) const {
  const SchemaKey& known = schema_key(key);
  const toml::node* node = find(known);
  if (node == nullptr) return known.fallback == "true";
  const auto* value = node->as_boolean();
  if (value == nullptr) refuse(key, describe(*node), due_for(known));
  return value->get();
}

double JobTable::to_quantity(const SchemaKey& key, const std::string& text,
                             const std::string& path) const {
  if (const auto value = bare_number(text); value && std::isfinite(*value)) {
    source_.refuse(path, in_quotes(text) + ", a number without a unit",
                   "write the unit too: " + with_usual_unit(key, *value));
  }
  double value = 0.0;
  try {
    value = source_.units().parse(text, key.dimension);
  } catch (const UnitError& error) {
    source_.refuse(path, fmt::format("{}, {}", in_quotes(text), error.what()), due_for(key));
  }
  if (const Magnitudes usual = magnitudes_of(key.dimension); !usual.hold(value)) {
    source_.refuse(path, in_quotes(text) + ", beyond all that is built",
                   fmt::format("{} of {} is due, or 0", in_words(key.dimension), usual.in_words));
  }
  return value;
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
  if (node != nullptr) return quantity_of(known, *node, path);
  return to_quantity(known, text_or_fallback(known), path);
}

std::optional<double> JobTable::quantity_unless_top(std::string_view key) const {
  const SchemaKey& known = schema_key(key);
  const toml::node* node = find(known);
  if (node->is_string() && node->as_string()->get() == "top") return std::nullopt;
  return quantity_of(known, *node, path_of(key));
}

void JobTable::refuse(std::string_view key, const std::string& found,
                      const std::string& due) const {
  source_.refuse(path_of(key), found, due);
}

std::string JobTable::written(std::string_view key) const {
  const toml::node* node = table_.get(key);
  return node == nullptr ? "nothing" : describe(*node);
}

JobTable JobTable::table_or_defaults(std::string_view name) const {
  static const toml::table without_keys;
  const std::vector<NamedTable> found = tables(name);
  if (!found.empty()) return found.front().table;
  return {without_keys, table_schema(name), path_of(name), source_};
}

const SchemaTable& JobTable::table_schema(std::string_view name) const {
  return schema_table(schema_.name.empty() ? std::string(name)
                                           : fmt::format("{}.{}", schema_.name, name));
}

std::vector<NamedTable> JobTable::tables(std::string_view name) const {
  const SchemaTable& schema = table_schema(name);
  const std::string path = path_of(name);
  const std::string due = fmt::format("{} is due", header_of(schema));
  const toml::node* node = table_.get(name);
  if (node == nullptr) {
    if (schema.required) source_.refuse(path, "nothing", due);
    return {};
  }
  source_.remember(path, line_of_node(*node));
  const std::size_t count = node->is_array()   ? node->as_array()->size()
                            : node->is_table() ? node->as_table()->size()
                                               : 0;
  if (schema.form != TableForm::single && count > most_tables) {
    source_.refuse(path, fmt::format("{} of them", count),
                   fmt::format("at most {} {} are due", most_tables, header_of(schema)));
  }
  std::vector<NamedTable> found;
  const auto add = [&](const toml::node& entry, const std::string& entry_path, std::string label) {
    source_.remember(entry_path, line_of_node(entry));
    const toml::table* table = entry.as_table();
    if (table == nullptr) source_.refuse(entry_path, describe(entry), due);
    found.push_back({std::move(label), JobTable(*table, schema, entry_path, source_)});
  };
  if (schema.form == TableForm::single) {
    add(*node, path, "");
  } else if (schema.form == TableForm::named) {
    const toml::table* group = node->as_table();
    if (group == nullptr) source_.refuse(path, describe(*node), due);
    for (const auto& [key, value] : *group) {
      if (key.str().empty()) source_.refuse(joined(path, ""), "an empty name", due);
      refuse_unfit_text(source_, joined(path, key.str()), key.str(), longest_name);
      add(value, joined(path, key.str()), std::string(key.str()));
    }
  } else {
    const toml::array* list = node->as_array();
    if (list == nullptr) {
      source_.refuse(path, node->is_table() ? fmt::format("[{}]", path) : describe(*node), due);
    }
    for (const toml::node& entry : *list) {
      add(entry, fmt::format("{}[{}]", path, found.size()), "");
    }
  }
  if (found.empty() && schema.required) source_.refuse(path, "nothing", due);
  return found;
}

}  // namespace deadshore::io
