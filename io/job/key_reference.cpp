#include "io/commands/terminal.h"
#include "io/job/job_wording.h"
#include "io/job/schema_pages.h"

#include <fmt/format.h>

#include <stdexcept>
#include <string>
#include <vector>

namespace deadshore::io {

namespace {

constexpr std::string_view name_of_top = "top";

/// The unit of a quantity, or what else is due.
std::string unit_of(const Key& key) {
  switch (key.kind) {
    case KeyKind::text:
      return "text";
    case KeyKind::number:
      return "number";
    case KeyKind::quantity:
      return std::string(key.unit.symbol);
    case KeyKind::quantity_or_top:
      return fmt::format("{} or \"top\"", key.unit.symbol);
    case KeyKind::choice:
      return "choice";
    case KeyKind::choices:
      return "list of choices";
    case KeyKind::texts:
      return "list of texts";
    case KeyKind::quantities:
      return fmt::format("list, {}", key.unit.symbol);
    case KeyKind::outline:
      return "list of points";
    case KeyKind::stretches:
      return "list of stretches";
    case KeyKind::flag:
      return "true or false";
    case KeyKind::layers:
      return "list of layers";
  }
  return "";
}

std::string default_of(const Key& key) {
  if (key.need == Need::required) return "required";
  return key.fallback.empty() ? "optional" : "default " + as_value(key, key.fallback);
}

std::string entry(const Key& key) {
  std::string text = fmt::format("  {:<21} {:<18} {}\n", key.name, unit_of(key), default_of(key));
  std::string more(key.meaning);
  if (!key.words.empty()) more += fmt::format(" One of {}.", alternatives(words_of(key)));
  if (const std::string range = range_of(key); !range.empty()) {
    more += fmt::format(" Range: {}.", range);
  }
  text += wrapped(more, 6);
  return text + wrapped(fmt::format("{} = {}", key.name, as_value(key, example_of(key))), 6);
}

/// What stands above the table's keys.
std::string heading(const SchemaTable& table) {
  const std::string due = table.required ? "required" : "optional";
  switch (table.form) {
    case TableForm::root:
      return "above the first table\n";
    case TableForm::single:
      return fmt::format("{}  {}\n", header_of(table), due);
    case TableForm::named:
      return fmt::format("{}  {}, once for each NAME\n", header_of(table), due);
    case TableForm::list:
      return fmt::format("{}  {}, once for each\n", header_of(table), due);
  }
  return "";
}

std::string_view written_name(const SchemaTable& table) {
  return table.form == TableForm::root ? name_of_top : table.name;
}

bool is_part_of(const SchemaTable& table, std::string_view name) {
  const std::string_view own = written_name(table);
  return own == name || (own.starts_with(name) && own.substr(name.size()).starts_with('.'));
}

}  // namespace

std::string reference_of(const SchemaTable& table) {
  std::string text = heading(table) + wrapped(table.meaning);
  for (const Key& key : table.keys) text += "\n" + entry(key);
  return text;
}

std::string key_reference(std::string_view name) {
  std::string text;
  std::vector<std::string_view> known;
  for (const SchemaTable& table : job_schema()) {
    known.push_back(written_name(table));
    if (!name.empty() && !is_part_of(table, name)) continue;
    text += (text.empty() ? "" : "\n\n") + reference_of(table);
  }
  if (text.empty()) {
    throw std::invalid_argument(fmt::format("no table {} in a job file; the nearest one is {}",
                                            in_quotes(name), in_quotes(nearest_name(name, known))));
  }
  return text;
}

}  // namespace deadshore::io
