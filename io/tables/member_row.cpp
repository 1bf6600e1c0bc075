#include "io/tables/member_row.h"

#include "io/error.h"
#include "io/job/job_limits.h"
#include "io/job/schema.h"
#include "io/job/toml_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace deadshore::io {

namespace {

/// Empty unless the node is a number above 0 that is near enough to what things measure.
std::optional<double> positive_number(const toml::node& node) {
  const std::optional<double> value = node.is_number() ? node.value<double>() : std::nullopt;
  constexpr Magnitudes usual{1e-9, 1e9};
  if (!value || !(*value > 0.0) || !usual.hold(*value)) return std::nullopt;
  return value;
}

std::string in_quotes(std::string_view text) {
  return fmt::format("\"{}\"", printable(std::string(text)));
}

}  // namespace

std::vector<std::string_view> table_groups() {
  return {"steel_group",  "timber_group", "prop_group",
          "ground_group", "weight_group", "imposed_group"};
}

MemberRow::MemberRow(const toml::table& table, std::string file, std::string path,
                     const std::vector<std::string_view>& known)
    : table_(table), file_(std::move(file)), path_(std::move(path)) {
  for (const auto& [key, value] : table_) {
    if (std::find(known.begin(), known.end(), key.str()) == known.end())
      refuse(key.str(), "an unknown key",
             fmt::format("the nearest known one is \"{}\"", nearest_name(key.str(), known)));
  }
}

void MemberRow::refuse(std::string_view key, const std::string& found,
                       const std::string& due) const {
  const toml::node* value = key.empty() ? nullptr : table_.get(key);
  const toml::node& place = value ? *value : table_;
  throw InputError(file_, static_cast<int>(place.source().begin.line), path_of(key), found, due);
}

std::string MemberRow::path_of(std::string_view key) const {
  if (key.empty()) return path_;
  const std::string name = printable(std::string(key));
  return path_.empty() ? name : path_ + "." + name;
}

const toml::node& MemberRow::node(std::string_view key, std::string_view due) const {
  const toml::node* value = table_.get(key);
  if (!value) refuse(key, "nothing", std::string(due));
  return *value;
}

std::string MemberRow::text(std::string_view key) const {
  constexpr std::string_view due = "a text between quotes is due";
  const auto* value = node(key, due).as_string();
  if (!value || value->get().empty()) refuse(key, "no text", std::string(due));
  if (value->get().size() > longest_text) {
    refuse(key, fmt::format("a text of {} bytes", value->get().size()),
           fmt::format("at most {} are due", longest_text));
  }
  if (const std::string sign = first_unprintable(value->get()); !sign.empty())
    refuse(key, fmt::format("a text with {}, which does not print", sign), std::string(due));
  return value->get();
}

std::size_t MemberRow::choice(std::string_view key,
                              const std::vector<std::string_view>& choices) const {
  const std::string value = text(key);
  const auto found = std::find(choices.begin(), choices.end(), value);
  if (found == choices.end())
    refuse(key, in_quotes(value),
           fmt::format("one of \"{}\" is due", fmt::join(choices, "\", \"")));
  return static_cast<std::size_t>(found - choices.begin());
}

double MemberRow::number(std::string_view key) const {
  constexpr std::string_view due = "a number above 0 is due";
  const std::optional<double> value = positive_number(node(key, due));
  if (!value) refuse(key, "another value", std::string(due));
  return *value;
}

std::vector<double> MemberRow::numbers(std::string_view key,
                                       std::optional<std::size_t> count) const {
  const std::string due = count ? fmt::format("a list of {} numbers above 0 is due", *count)
                                : std::string("a list of numbers above 0 is due");
  const auto* list = node(key, due).as_array();
  if (!list || (count && list->size() != *count)) refuse(key, "another value", due);
  if (list->size() > most_values)
    refuse(key, fmt::format("a list of {}", list->size()),
           fmt::format("at most {} are due", most_values));
  std::vector<double> values;
  for (const toml::node& entry : *list) {
    const std::optional<double> value = positive_number(entry);
    if (!value) refuse(key, "another value in the list", due);
    values.push_back(*value);
  }
  return values;
}

bool MemberRow::flag(std::string_view key) const {
  const toml::node* value = table_.get(key);
  if (!value) return false;
  if (!value->is_boolean()) refuse(key, "another value", "true or false is due");
  return value->as_boolean()->get();
}

MemberRow MemberRow::row(std::string_view key, const std::vector<std::string_view>& known) const {
  const auto* table = node(key, "a table is due").as_table();
  if (!table) refuse(key, "another value", "a table is due");
  return {*table, file_, path_of(key), known};
}

std::vector<MemberRow> MemberRow::rows(std::string_view key,
                                       const std::vector<std::string_view>& known) const {
  constexpr std::string_view due = "a list of tables is due";
  const auto* list = node(key, due).as_array();
  if (!list || list->empty()) refuse(key, "no list of tables", std::string(due));
  if (list->size() > most_rows)
    refuse(key, fmt::format("a list of {}", list->size()),
           fmt::format("at most {} are due", most_rows));
  std::vector<MemberRow> found;
  for (const toml::node& entry : *list) {
    const auto* table = entry.as_table();
    if (!table) refuse(key, "something else in the list", std::string(due));
    found.emplace_back(*table, file_, fmt::format("{}[{}]", path_of(key), found.size()), known);
  }
  return found;
}

}  // namespace deadshore::io
