#include "io/job/build_up_reader.h"

#include "io/job/job_wording.h"
#include "io/tables/member_choice.h"

#include <fmt/format.h>

namespace deadshore::io {

namespace {

const WeightRow& material_of(const WrittenLayer& layer, const WeightTables& weights,
                             const JobSource& source) {
  try {
    return weights.material(layer.material);
  } catch (const UnknownMember& error) {
    source.refuse(layer.path, in_quotes(layer.material) + ", a material that no table has",
                  fmt::format("the nearest known one is {}; or give its weight too: [{}, \"0.4 "
                              "kN/m2\"]",
                              in_quotes(error.nearest()), in_quotes(layer.material)));
  }
}

solver::Layer layer_of_tables(const WrittenLayer& layer, const WeightTables& weights,
                              const JobSource& source) {
  const WeightRow& row = material_of(layer, weights, source);
  if (layer.thickness && row.unit_weight) {
    return {.material = row.name,
            .thickness = *layer.thickness,
            .weight = *row.unit_weight * *layer.thickness,
            .source = row.source};
  }
  if (layer.thickness) {
    source.refuse(layer.path, fmt::format("a thickness of {}", in_quotes(layer.material)),
                  fmt::format("its weight is by area: {} alone is due", in_quotes(row.name)));
  }
  if (!row.area_weight) {
    source.refuse(layer.path, in_quotes(layer.material) + " without a thickness",
                  fmt::format("[{}, \"22 mm\"] or the like is due", in_quotes(row.name)));
  }
  return {.material = row.name, .weight = *row.area_weight, .source = row.source};
}

solver::Layer weigh(const WrittenLayer& layer, const WeightTables& weights,
                    const JobSource& source) {
  if (layer.thickness && !(*layer.thickness > 0.0)) {
    source.refuse(layer.path, fmt::format("a thickness of {:g} mm", *layer.thickness),
                  "more than 0 is due");
  }
  if (layer.area_weight) {
    return {
        .material = layer.material, .weight = *layer.area_weight, .source = std::string(as_given)};
  }
  if (layer.unit_weight) {
    return {.material = layer.material,
            .thickness = *layer.thickness,
            .weight = *layer.unit_weight * *layer.thickness,
            .source = std::string(as_given)};
  }
  return layer_of_tables(layer, weights, source);
}

}  // namespace

solver::BuildUp read_build_up(const JobTable& table, std::string_view key,
                              const WeightTables& weights, const JobSource& source) {
  solver::BuildUp build_up;
  for (const WrittenLayer& layer : table.layers(key)) {
    build_up.push_back(weigh(layer, weights, source));
  }
  return build_up;
}

MasonryWeight read_masonry_weight(const JobTable& table, const WeightTables& weights) {
  if (table.one_of("material, unit_weight") == "unit_weight") {
    return {table.quantity("unit_weight"), std::string(as_given)};
  }
  const WeightRow row = known_member(
      table, "material", [&](const std::string& name) { return weights.material(name); });
  if (!row.unit_weight) {
    table.refuse("material", table.written("material") + ", whose weight is by area",
                 "a material with a weight by volume is due, or `unit_weight` in its place");
  }
  return {*row.unit_weight, row.source};
}

}  // namespace deadshore::io
