#include "io/tables/lintel_materials.h"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <string>

namespace deadshore::io {

namespace {

constexpr std::array<LintelMaterial, 4> materials{{
    {"concrete", 30000.0, 0.2, 25.0e-6},
    {"steel", 210000.0, 0.3, 78.5e-6},
    {"timber", 11000.0, 0.3, 4.2e-6},
    {"stone", 20000.0, 0.2, 25.0e-6},
}};

}  // namespace

const LintelMaterial& lintel_material(std::string_view name) {
  const auto* found =
      std::find_if(materials.begin(), materials.end(),
                   [&](const LintelMaterial& material) { return material.name == name; });
  if (found == materials.end()) throw std::out_of_range("no lintel material " + std::string(name));
  return *found;
}

}  // namespace deadshore::io
