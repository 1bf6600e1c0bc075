#include "io/job/job_limits.h"
#include "io/job/job_table.h"
#include "io/job/job_wording.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <utility>

namespace deadshore::io {

namespace {

// The parts of a layer.
constexpr Key layer_material{.kind = KeyKind::text, .example = "softwood"};
constexpr Key layer_thickness{.kind = KeyKind::quantity,
                              .unit = solver::fields::mm,
                              .example = "22 mm\" or a weight by area such as \"0.4 kN/m2"};
constexpr Key layer_unit_weight{
    .kind = KeyKind::quantity, .unit = solver::fields::kN_per_m3, .example = "12 kN/m3"};

/// The number that makes up the whole of `text`, if it is one.
std::optional<double> bare_number(std::string_view text) {
  double value = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return value;
}

}  // namespace

std::string JobTable::string_of(const Key& key, const toml::node& node,
                                const std::string& path) const {
  const auto* text = node.as_string();
  if (text == nullptr) source_.refuse(path, describe(node), due_for(key));
  if (text->get().find_first_not_of(" \t\r\n") == std::string::npos) {
    source_.refuse(path, "an empty text", due_for(key));
  }
  if (key.kind == KeyKind::text || key.kind == KeyKind::texts) {
    source_.require_printable(path, text->get(), key.name == "name" ? longest_name : longest_text);
  }
  return text->get();
}

std::string JobTable::text_or_fallback(const Key& key) const {
  const toml::node* node = find(key);
  if (node != nullptr) return string_of(key, *node, path_of(key.name));
  if (key.fallback.empty()) refuse(key.name, "nothing", due_for(key));
  return std::string(key.fallback);
}

std::string JobTable::text(std::string_view key) const {
  return text_or_fallback(schema_key(key));
}

const solver::Word& JobTable::word_of(const Key& key, const std::string& text,
                                      const std::string& path, const std::string& due) const {
  const auto word = std::ranges::find(key.words, text, &solver::Word::text);
  if (word == key.words.end()) source_.refuse(path, in_quotes(text), due);
  return *word;
}

const solver::Word& JobTable::chosen_word(std::string_view key) const {
  const Key& known = schema_key(key);
  return word_of(known, text_or_fallback(known), path_of(key), due_for(known));
}

double JobTable::number(std::string_view key) const {
  const Key& known = schema_key(key);
  const toml::node* node = find(known);
  const std::optional<double> value =
      node != nullptr && node->is_number() ? node->value<double>() : std::nullopt;
  if (!value || !std::isfinite(*value)) {
    refuse(key, node == nullptr ? "nothing" : describe(*node), due_for(known));
  }
  if (const Magnitudes usual = magnitudes_of(Dimension::none); !usual.hold(*value)) {
    refuse(key, describe(*node) + ", beyond all that is reckoned with",
           fmt::format("a number of {} is due, or 0", usual.in_words));
  }
  return *value;
}

int JobTable::whole_number(std::string_view key) const {
  const Key& known = schema_key(key);
  const double value = number(key);
  if (!known.range.holds(value)) {
    refuse(key, written(key), in_words(known.range, known.unit) + " is due");
  }
  return static_cast<int>(value);
}

bool JobTable::flag(std::string_view key) const {
  const Key& known = schema_key(key);
  const toml::node* node = find(known);
  if (node == nullptr) return false;
  const auto* value = node->as_boolean();
  if (value == nullptr) refuse(key, describe(*node), due_for(known));
  return value->get();
}

double JobTable::to_quantity(const Key& key, const std::string& text,
                             const std::string& path) const {
  if (const auto value = bare_number(text); value && std::isfinite(*value)) {
    source_.refuse(path, in_quotes(text) + ", a number without a unit",
                   "write the unit too: " + with_usual_unit(key, *value));
  }
  double value = 0.0;
  try {
    value = source_.units().parse(text, key.unit.dimension);
  } catch (const UnitError& error) {
    source_.refuse(path, fmt::format("{}, {}", in_quotes(text), error.what()), due_for(key));
  }
  if (const Magnitudes usual = magnitudes_of(key.unit.dimension); !usual.hold(value)) {
    source_.refuse(
        path, in_quotes(text) + ", beyond all that is built",
        fmt::format("{} of {} is due, or 0", in_words(key.unit.dimension), usual.in_words));
  }
  return value;
}

double JobTable::quantity_of(const Key& key, const toml::node& node,
                             const std::string& path) const {
  const std::optional<double> value = node.is_number() ? node.value<double>() : std::nullopt;
  if (value && std::isfinite(*value)) {
    source_.refuse(path, describe(node) + ", a number without a unit",
                   "write it between quotes with its unit: " + with_usual_unit(key, *value));
  }
  return to_quantity(key, string_of(key, node, path), path);
}

double JobTable::quantity(std::string_view key) const {
  const Key& known = schema_key(key);
  const toml::node* node = find(known);
  const std::string path = path_of(key);
  if (node != nullptr) return quantity_of(known, *node, path);
  return to_quantity(known, text_or_fallback(known), path);
}

std::optional<double> JobTable::quantity_unless_top(std::string_view key) const {
  const Key& known = schema_key(key);
  const toml::node* node = find(known);
  if (node->is_string() && node->as_string()->get() == "top") return std::nullopt;
  return quantity_of(known, *node, path_of(key));
}

const toml::array& JobTable::list_of(const Key& key) const {
  const toml::node* node = find(key);
  if (node == nullptr) refuse(key.name, "nothing", due_for(key));
  const toml::array* list = node->as_array();
  if (list == nullptr) refuse(key.name, describe(*node), due_for(key));
  if (list->size() > most_values) {
    refuse(key.name, fmt::format("a list of {}", list->size()),
           fmt::format("at most {} are due", most_values));
  }
  return *list;
}

std::string JobTable::remember_entry(std::string_view key, std::size_t index,
                                     const toml::node& entry) const {
  std::string path = fmt::format("{}[{}]", path_of(key), index);
  source_.remember(path, line_of_node(entry));
  return path;
}

std::vector<int> JobTable::choices(std::string_view key) const {
  const Key& known = schema_key(key);
  std::vector<int> chosen;
  if (!has(key)) {
    for (const solver::Word& word : known.words) chosen.push_back(word.value);
    return chosen;
  }
  const toml::array& list = list_of(known);
  if (list.empty()) refuse(key, "an empty list", due_for(known));
  for (const toml::node& entry : list) {
    const std::string path = remember_entry(key, chosen.size(), entry);
    const std::string text = string_of(known, entry, path);
    const int value = word_of(known, text, path, alternatives(words_of(known)) + " is due").value;
    if (std::ranges::find(chosen, value) != chosen.end()) {
      source_.refuse(path, in_quotes(text) + " twice", "each is due once at most");
    }
    chosen.push_back(value);
  }
  return chosen;
}

std::vector<std::string> JobTable::texts(std::string_view key) const {
  const Key& known = schema_key(key);
  std::vector<std::string> found;
  for (const toml::node& entry : list_of(known)) {
    found.push_back(string_of(known, entry, remember_entry(key, found.size(), entry)));
  }
  return found;
}

std::vector<double> JobTable::quantities(std::string_view key) const {
  const Key& known = schema_key(key);
  std::vector<double> found;
  for (const toml::node& entry : list_of(known)) {
    found.push_back(quantity_of(known, entry, remember_entry(key, found.size(), entry)));
  }
  return found;
}

JobTable::Pairs JobTable::length_pairs(std::string_view key, std::string_view name,
                                       std::string_view example) const {
  const Key& known = schema_key(key);
  const Key single{.name = key, .kind = KeyKind::quantity, .unit = known.unit, .example = "5.2 m"};
  Pairs pairs;
  for (const toml::node& entry : list_of(known)) {
    const std::string path = remember_entry(key, pairs.size(), entry);
    const toml::array* pair = entry.as_array();
    if (pair == nullptr || pair->size() != 2) {
      source_.refuse(path, pair == nullptr ? describe(entry) : "a list that is not of two lengths",
                     fmt::format("{} is due, such as {}", name, example));
    }
    const double first = quantity_of(single, *pair->get(0), path + "[0]");
    const double second = quantity_of(single, *pair->get(1), path + "[1]");
    pairs.emplace_back(first, second);
  }
  return pairs;
}

std::vector<mesh::Point> JobTable::outline(std::string_view key) const {
  std::vector<mesh::Point> points;
  for (const auto& [x, y] : length_pairs(key, "a point", R"(["3 m", "8 m"])")) {
    points.push_back({x, y});
  }
  if (points.size() < 2) refuse(key, "fewer than two points", due_for(schema_key(key)));
  return points;
}

std::vector<mesh::Interval> JobTable::stretches(std::string_view key) const {
  std::vector<mesh::Interval> found;
  for (const auto& [from, to] : length_pairs(key, "a stretch", R"(["0 mm", "102 mm"])")) {
    found.push_back({from, to});
  }
  if (found.empty()) refuse(key, "an empty list", due_for(schema_key(key)));
  return found;
}

void JobTable::measure_layer(WrittenLayer& layer, const toml::node& node,
                             const std::string& path) const {
  const auto* written = node.as_string();
  if (written != nullptr) {
    try {
      layer.area_weight = source_.units().parse(written->get(), Dimension::stress);
      return;
    } catch (const UnitError&) {  // then it is due to be a thickness
    }
  }
  layer.thickness = quantity_of(layer_thickness, node, path);
}

WrittenLayer JobTable::layer_of(const Key& key, const toml::node& entry,
                                const std::string& path) const {
  if (entry.is_string()) return {.material = string_of(key, entry, path), .path = path};
  const toml::array* parts = entry.as_array();
  if (parts == nullptr || parts->empty() || parts->size() > 3) {
    source_.refuse(path,
                   parts == nullptr ? describe(entry) : fmt::format("a list of {}", parts->size()),
                   "a layer is due, such as \"plasterboard and skim\" or "
                   "[\"softwood\", \"22 mm\"]");
  }
  WrittenLayer layer{.material = string_of(layer_material, *parts->get(0), path + "[0]"),
                     .path = path};
  if (parts->size() == 2) measure_layer(layer, *parts->get(1), path + "[1]");
  if (parts->size() == 3) {
    layer.thickness = quantity_of(layer_thickness, *parts->get(1), path + "[1]");
    layer.unit_weight = quantity_of(layer_unit_weight, *parts->get(2), path + "[2]");
  }
  return layer;
}

std::vector<WrittenLayer> JobTable::layers(std::string_view key) const {
  const Key& known = schema_key(key);
  std::vector<WrittenLayer> found;
  for (const toml::node& entry : list_of(known)) {
    found.push_back(layer_of(known, entry, remember_entry(key, found.size(), entry)));
  }
  if (found.empty()) refuse(key, "an empty list", due_for(known));
  return found;
}

}  // namespace deadshore::io
