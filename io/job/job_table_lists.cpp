#include "io/job/job_limits.h"
#include "io/job/job_table.h"
#include "io/job/job_wording.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace deadshore::io {

namespace {

// The parts of a layer.
constexpr SchemaKey layer_material{.kind = KeyKind::text, .example = "softwood"};
constexpr SchemaKey layer_thickness{.kind = KeyKind::quantity,
                                    .dimension = Dimension::length,
                                    .usual_unit = "mm",
                                    .example = "22 mm\" or a weight by area such as \"0.4 kN/m2"};
constexpr SchemaKey layer_unit_weight{.kind = KeyKind::quantity,
                                      .dimension = Dimension::force_per_volume,
                                      .usual_unit = "kN/m3",
                                      .example = "12 kN/m3"};

}  // namespace

const toml::array& JobTable::list_of(const SchemaKey& key) const {
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

std::vector<std::string> JobTable::choices(std::string_view key) const {
  const SchemaKey& known = schema_key(key);
  const std::vector<std::string> all = split_choices(known.choices);
  if (!has(key) && !known.fallback.empty()) return split_choices(known.fallback);
  const toml::array& list = list_of(known);
  if (list.empty()) refuse(key, "an empty list", due_for(known));
  std::vector<std::string> chosen;
  for (const toml::node& entry : list) {
    const std::string path = remember_entry(key, chosen.size(), entry);
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

std::vector<std::string> JobTable::texts(std::string_view key) const {
  const SchemaKey& known = schema_key(key);
  std::vector<std::string> found;
  for (const toml::node& entry : list_of(known)) {
    found.push_back(string_of(known, entry, remember_entry(key, found.size(), entry)));
  }
  return found;
}

std::vector<double> JobTable::quantities(std::string_view key) const {
  const SchemaKey& known = schema_key(key);
  std::vector<double> found;
  for (const toml::node& entry : list_of(known)) {
    found.push_back(quantity_of(known, entry, remember_entry(key, found.size(), entry)));
  }
  return found;
}

JobTable::Pairs JobTable::length_pairs(std::string_view key, std::string_view usual_unit,
                                       std::string_view name, std::string_view example) const {
  const SchemaKey& known = schema_key(key);
  const SchemaKey single{.name = key,
                         .kind = KeyKind::quantity,
                         .dimension = Dimension::length,
                         .usual_unit = usual_unit,
                         .example = "5.2 m"};
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
  for (const auto& [x, y] : length_pairs(key, "m", "a point", R"(["3 m", "8 m"])")) {
    points.push_back({x, y});
  }
  if (points.size() < 2) refuse(key, "fewer than two points", due_for(schema_key(key)));
  return points;
}

std::vector<mesh::Interval> JobTable::stretches(std::string_view key) const {
  std::vector<mesh::Interval> found;
  for (const auto& [from, to] : length_pairs(key, "mm", "a stretch", R"(["0 mm", "102 mm"])")) {
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

WrittenLayer JobTable::layer_of(const SchemaKey& key, const toml::node& entry,
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
  const SchemaKey& known = schema_key(key);
  std::vector<WrittenLayer> found;
  for (const toml::node& entry : list_of(known)) {
    found.push_back(layer_of(known, entry, remember_entry(key, found.size(), entry)));
  }
  if (found.empty()) refuse(key, "an empty list", due_for(known));
  return found;
}

}  // namespace deadshore::io
