#include "io/job/schema.h"

#include "solver/job/house_fields.h"
#include "solver/job/job_fields.h"
#include "solver/job/lifting_fields.h"
#include "solver/job/permanent_works_fields.h"
#include "solver/job/shore_frame_fields.h"

#include <fmt/format.h>

#include <algorithm>
#include <deque>
#include <stdexcept>
#include <string>

namespace deadshore::io {

namespace {

namespace fields = solver::fields;

/// What a new value of the struct has for a field, as it is written between the quotes.
template <class Struct>
std::string default_of(const solver::Field<Struct>& field, const Struct& values) {
  const Key& key = field.key;
  if (const auto number = solver::number_in(values, field.member))
    return fmt::format("{:.12g}{}{}", *number / key.unit.size, key.unit.symbol.empty() ? "" : " ",
                       key.unit.symbol);
  if (const auto* text = std::get_if<solver::Access<Struct, std::string>>(&field.member))
    return text->to_read(values);
  const auto& word = std::get<solver::WordAccess<Struct>>(field.member);
  return std::string(std::ranges::find(key.words, word.get(values), &solver::Word::value)->text);
}

/// The tables, and the defaults that were worked out for them.
struct Schema {
  std::vector<SchemaTable> tables;
  std::deque<std::string> defaults;

  template <class Struct>
  void add(const solver::Table<Struct>& table) {
    SchemaTable added{table.name, table.form, table.need == Need::required, table.meaning, {}};
    for (const solver::Field<Struct>& field : table.fields) {
      Key key = field.key;
      if (key.need == Need::with_default && key.fallback.empty())
        key.fallback = defaults.emplace_back(default_of(field, table.defaults()));
      if (key.need == Need::required && field.counts != nullptr) key.need = Need::optional;
      added.keys.push_back(key);
    }
    tables.push_back(std::move(added));
  }
};

Schema make_schema() {
  Schema schema;
  schema.add(fields::top);
  schema.add(fields::title_block);
  schema.add(fields::wall);
  schema.add(fields::masonry);
  schema.add(fields::opening);
  schema.add(fields::lintel);
  schema.add(fields::cut);
  schema.add(fields::line_load);
  schema.add(fields::point_load);
  schema.add(fields::floor);
  schema.add(fields::loft);
  schema.add(fields::roof);
  schema.add(fields::purlin);
  schema.add(fields::partition);
  schema.add(fields::upper_wall);
  schema.add(fields::chimney);
  schema.add(fields::contents);
  schema.add(fields::bracing);
  schema.add(fields::footing);
  schema.add(fields::needle);
  schema.add(fields::needle_frame);
  schema.add(fields::needle_prop);
  schema.add(fields::prop_capacity);
  schema.add(fields::beam);
  schema.add(fields::padstone);
  schema.add(fields::packing);
  schema.add(fields::dead_shore);
  schema.add(fields::shore_frame);
  schema.add(fields::lift);
  schema.add(fields::lifter);
  schema.add(fields::lifter_capacity);
  schema.add(fields::stand);
  schema.add(fields::fixing);
  schema.add(fields::stage);
  schema.add(fields::removal);
  schema.add(fields::checks);
  schema.add(fields::analysis);
  return schema;
}

/// Letters to change, add, drop or swap with the next to turn one word into the other.
std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before;
  std::vector<std::size_t> last(b.size() + 1);
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({change, last[j] + 1, row[j - 1] + 1});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
    }
    before = last;
    std::swap(last, row);
  }
  return last[b.size()];
}

}  // namespace

std::span<const SchemaTable> job_schema() {
  static const Schema schema = make_schema();
  return schema.tables;
}

std::string_view parent_of(const SchemaTable& table) {
  const std::size_t dot = table.name.find_last_of('.');
  return dot == std::string_view::npos ? "" : table.name.substr(0, dot);
}

std::string_view own_name(const SchemaTable& table) {
  const std::size_t dot = table.name.find_last_of('.');
  return dot == std::string_view::npos ? table.name : table.name.substr(dot + 1);
}

std::vector<const SchemaTable*> tables_in(const SchemaTable& table) {
  std::vector<const SchemaTable*> inner;
  for (const SchemaTable& other : job_schema()) {
    if (other.form != TableForm::root && parent_of(other) == table.name) inner.push_back(&other);
  }
  return inner;
}

const SchemaTable& schema_table(std::string_view name) {
  const auto found = std::ranges::find(job_schema(), name, &SchemaTable::name);
  if (found == job_schema().end())
    throw std::out_of_range(fmt::format("no table [{}] in the schema", name));
  return *found;
}

const Key* find_key(const SchemaTable& table, std::string_view name) {
  const auto found = std::ranges::find(table.keys, name, &Key::name);
  return found == table.keys.end() ? nullptr : &*found;
}

std::string_view nearest_name(std::string_view name, std::span<const std::string_view> known) {
  // A longer name than any key is no nearer for its rest, and the sum stays small.
  const std::string_view start = name.substr(0, 64);
  return *std::min_element(known.begin(), known.end(), [&](std::string_view a, std::string_view b) {
    return edit_distance(start, a) < edit_distance(start, b);
  });
}

}  // namespace deadshore::io
