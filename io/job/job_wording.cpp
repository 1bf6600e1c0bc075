#include "io/job/job_wording.h"

#include "io/error.h"
#include "io/job/units.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::io {

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

std::string in_quotes(std::string_view text) {
  return fmt::format("\"{}\"", printable(std::string(text)));
}

std::string as_key(std::string_view key) {
  const auto is_bare = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' ||
           c == '-';
  };
  const bool bare = !key.empty() && std::all_of(key.begin(), key.end(), is_bare);
  return bare ? printable(std::string(key)) : in_quotes(key);
}

std::string describe(const toml::node& node) {
  if (const auto* text = node.as_string()) return in_quotes(text->get());
  if (const auto* integer = node.as_integer()) return fmt::format("{}", integer->get());
  if (const auto* real = node.as_floating_point()) return fmt::format("{}", real->get());
  if (const auto* boolean = node.as_boolean()) return boolean->get() ? "true" : "false";
  if (node.is_array_of_tables()) return "a list of tables";
  if (node.is_array()) return "a list";
  if (node.is_table()) return "a table";
  return "a date or time";
}

std::string with_usual_unit(const Key& key, double value) {
  // Nobody means a wall of 5600 m: where a bare number is that large, it was meant in mm.
  constexpr double most_metres = 50.0;
  const bool in_mm = key.unit.symbol == "m" && std::abs(value) >= most_metres;
  return fmt::format("\"{} {}\"", value, in_mm ? "mm" : key.unit.symbol);
}

std::vector<std::string_view> words_of(const Key& key) {
  std::vector<std::string_view> words;
  for (const solver::Word& word : key.words) words.push_back(word.text);
  return words;
}

std::string alternatives(std::span<const std::string_view> words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? " or " : ", ";
    text += in_quotes(words[i]);
  }
  return text;
}

std::string as_value(const Key& key, std::string_view written) {
  const bool is_string = key.kind == KeyKind::text || key.kind == KeyKind::choice ||
                         key.kind == KeyKind::quantity || key.kind == KeyKind::quantity_or_top;
  return is_string ? fmt::format("\"{}\"", written) : std::string(written);
}

std::string_view example_of(const Key& key) {
  if (!key.example.empty()) return key.example;
  return key.fallback.empty() ? key.words.front().text : key.fallback;
}

std::string range_of(const Key& key) {
  const std::string range = in_words(key.range, key.unit);
  const std::string_view bounds = key.range.bounds;
  return fmt::format("{}{}{}", range, range.empty() || bounds.empty() ? "" : ", ", bounds);
}

std::string due_for(const Key& key) {
  const auto such = [&](std::string_view what) {
    return fmt::format("{} is due, such as {}", what, as_value(key, key.example));
  };
  const std::string_view dimension = in_words(key.unit.dimension);
  switch (key.kind) {
    case KeyKind::text:
      return such("a text between quotes");
    case KeyKind::number:
    case KeyKind::quantity:
      return such(dimension);
    case KeyKind::quantity_or_top:
      return such(dimension) + ", or \"top\"";
    case KeyKind::choice:
      return alternatives(words_of(key)) + " is due";
    case KeyKind::choices:
      return fmt::format("a list of {} is due", alternatives(words_of(key)));
    case KeyKind::texts:
      return such("a list of texts between quotes");
    case KeyKind::quantities:
      return fmt::format("a list is due, each {}, such as {}", dimension, key.example);
    case KeyKind::stretches:
      return such("a list of stretches");
    case KeyKind::outline:
      return such("a list of points");
    case KeyKind::flag:
      return "true or false is due";
    case KeyKind::layers:
      return such("a list of layers");
  }
  return "";
}

std::string header_of(const SchemaTable& schema) {
  if (schema.form == TableForm::root) return "";
  std::string path;
  for (const SchemaTable* table = &schema; table->form != TableForm::root;
       table = &schema_table(parent_of(*table))) {
    const std::string step =
        fmt::format("{}{}", own_name(*table), table->form == TableForm::named ? ".NAME" : "");
    path = path.empty() ? step : fmt::format("{}.{}", step, path);
  }
  return schema.form == TableForm::list ? fmt::format("[[{}]]", path) : fmt::format("[{}]", path);
}

}  // namespace deadshore::io
