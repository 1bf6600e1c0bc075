#include "io/job/job_table.h"

#include "io/error.h"
#include "io/job/job_limits.h"
#include "io/job/job_wording.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace deadshore::io {

namespace {

std::string joined(const std::string& path, std::string_view key) {
  return path.empty() ? as_key(key) : path + "." + as_key(key);
}

std::vector<std::string_view> known_names(const SchemaTable& schema) {
  std::vector<std::string_view> names;
  for (const Key& key : schema.keys) names.push_back(key.name);
  for (const SchemaTable* table : tables_in(schema)) names.push_back(own_name(*table));
  return names;
}

/// Calls `visit` with a table and all tables inside it.
template <class Visit>
void visit_tables(const JobTable& table, const Visit& visit) {
  visit(table);
  for (const SchemaTable* inner : tables_in(table.schema())) {
    for (const NamedTable& entry : table.tables(own_name(*inner))) visit_tables(entry.table, visit);
  }
}

void check_value(const JobTable& table, const Key& key) {
  switch (key.kind) {
    case KeyKind::text:
      return static_cast<void>(table.text(key.name));
    case KeyKind::number:
      return static_cast<void>(table.number(key.name));
    case KeyKind::quantity:
      return static_cast<void>(table.quantity(key.name));
    case KeyKind::quantity_or_top:
      return static_cast<void>(table.quantity_unless_top(key.name));
    case KeyKind::choice:
      return static_cast<void>(table.choice<int>(key.name));
    case KeyKind::choices:
      return static_cast<void>(table.choices(key.name));
    case KeyKind::texts:
      return static_cast<void>(table.texts(key.name));
    case KeyKind::quantities:
      return static_cast<void>(table.quantities(key.name));
    case KeyKind::outline:
      return static_cast<void>(table.outline(key.name));
    case KeyKind::stretches:
      return static_cast<void>(table.stretches(key.name));
    case KeyKind::flag:
      return static_cast<void>(table.flag(key.name));
    case KeyKind::layers:
      return static_cast<void>(table.layers(key.name));
  }
}

}  // namespace

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

std::string_view JobTable::one_of(std::initializer_list<std::string_view> keys) const {
  const std::string due = alternatives(keys) + " is due";
  std::string_view found;
  for (const std::string_view key : keys) {
    if (!has(key)) continue;
    if (!found.empty()) {
      refuse(key, fmt::format("{} beside {}", written(key), in_quotes(found)), due + ", not both");
    }
    found = key;
  }
  if (found.empty()) refuse(*keys.begin(), "nothing", due);
  return found;
}

void JobTable::require(std::string_view key) const {
  if (!has(key)) refuse(key, "nothing", due_for(schema_key(key)));
}

const Key& JobTable::schema_key(std::string_view key) const {
  const Key* found = find_key(schema_, key);
  if (found == nullptr) throw std::out_of_range(fmt::format("no key {} in the schema", key));
  return *found;
}

const toml::node* JobTable::find(const Key& key) const {
  const toml::node* node = table_.get(key.name);
  if (node == nullptr && key.need == Need::required) refuse(key.name, "nothing", due_for(key));
  return node;
}

void JobTable::refuse(std::string_view key, const std::string& found,
                      const std::string& due) const {
  source_.refuse(path_of(key), found, due);
}

std::string JobTable::written(std::string_view key) const {
  const toml::node* node = table_.get(key);
  return node == nullptr ? "nothing" : describe(*node);
}

std::optional<JobTable> JobTable::table(std::string_view name) const {
  const std::vector<NamedTable> found = tables(name);
  if (found.empty()) return std::nullopt;
  return found.front().table;
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
      source_.require_printable(joined(path, key.str()), key.str(), longest_name);
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

void JobTable::check_all() const {
  visit_tables(*this, [](const JobTable&) {});  // whose making refuses unknown keys
  visit_tables(*this, [](const JobTable& table) {
    for (const Key& key : table.schema().keys) {
      if (table.has(key.name)) check_value(table, key);
    }
  });
}

}  // namespace deadshore::io
