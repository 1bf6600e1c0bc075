#include "io/job/job_wording.h"

#include "io/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::io {

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

std::string with_usual_unit(const SchemaKey& key, double value) {
  // Nobody means a wall of 5600 m: where a bare number is that large, it was meant in mm.
  constexpr double most_metres = 50.0;
  const bool in_mm = key.usual_unit == "m" && std::abs(value) >= most_metres;
  return fmt::format("\"{} {}\"", value, in_mm ? "mm" : key.usual_unit);
}

std::vector<std::string> split_choices(std::string_view choices) {
  std::vector<std::string> parts;
  constexpr std::string_view comma = ", ";
  for (std::size_t end = choices.find(comma); end != std::string_view::npos;
       end = choices.find(comma)) {
    parts.emplace_back(choices.substr(0, end));
    choices.remove_prefix(end + comma.size());
  }
  parts.emplace_back(choices);
  return parts;
}

std::string alternatives(std::string_view choices) {
  const std::vector<std::string> parts = split_choices(choices);
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i > 0) text += i + 1 == parts.size() ? " or " : ", ";
    text += in_quotes(parts[i]);
  }
  return text;
}

std::string as_value(const SchemaKey& key, std::string_view written) {
  switch (key.kind) {
    case KeyKind::text:
    case KeyKind::quantity:
    case KeyKind::quantity_or_top:
    case KeyKind::choice:
      return fmt::format("\"{}\"", written);
    case KeyKind::choices:
      return fmt::format("[\"{}\"]", fmt::join(split_choices(written), "\", \""));
    case KeyKind::number:
    case KeyKind::texts:
    case KeyKind::quantities:
    case KeyKind::outline:
    case KeyKind::stretches:
    case KeyKind::flag:
    case KeyKind::layers:
      return std::string(written);
  }
  return "";
}

std::string example_of(const SchemaKey& key) {
  if (!key.example.empty()) return std::string(key.example);
  if (!key.fallback.empty()) return std::string(key.fallback);
  return key.choices.empty() ? "" : split_choices(key.choices).front();
}

std::string due_for(const SchemaKey& key) {
  switch (key.kind) {
    case KeyKind::text:
      return fmt::format("a text between quotes is due, such as \"{}\"", key.example);
    case KeyKind::number:
      return fmt::format("a number is due, such as {}", key.example);
    case KeyKind::quantity:
      return fmt::format("{} is due, such as \"{}\"", in_words(key.dimension), key.example);
    case KeyKind::quantity_or_top:
      return fmt::format("{} is due, such as \"{}\", or \"top\"", in_words(key.dimension),
                         key.example);
    case KeyKind::choice:
      return fmt::format("{} is due", alternatives(key.choices));
    case KeyKind::choices:
      return fmt::format("a list of {} is due", alternatives(key.choices));
    case KeyKind::texts:
      return fmt::format("a list of texts between quotes is due, such as {}", key.example);
    case KeyKind::quantities:
      return fmt::format("a list is due, each {}, such as {}", in_words(key.dimension),
                         key.example);
    case KeyKind::stretches:
      return fmt::format("a list of stretches is due, such as {}", key.example);
    case KeyKind::outline:
      return fmt::format("a list of points is due, such as {}", key.example);
    case KeyKind::flag:
      return "true or false is due";
    case KeyKind::layers:
      return fmt::format("a list of layers is due, such as {}", key.example);
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
