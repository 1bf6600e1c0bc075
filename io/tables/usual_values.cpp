#include "io/tables/usual_values.h"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <string>

namespace deadshore::io {

namespace {

constexpr std::array<LintelMaterial, 4> lintel_materials{{
    {"concrete", 30000.0, 0.2, 25.0e-6},
    {"steel", 210000.0, 0.3, 78.5e-6},
    {"timber", 11000.0, 0.3, 4.2e-6},
    {"stone", 20000.0, 0.2, 25.0e-6},
}};

struct UsualModulus {
  std::string_view ground;
  double MN_per_m3 = 0.0;
};

constexpr std::array<UsualModulus, 9> moduli{{
    {"dense gravel", 94.0},
    {"medium dense gravel", 19.0},
    {"loose gravel", 6.0},
    {"compact sand", 94.0},
    {"medium dense sand", 19.0},
    {"loose sand", 6.0},
    {"very stiff clay", 31.0},
    {"stiff clay", 16.0},
    {"firm clay", 8.0},
}};

}  // namespace

const LintelMaterial& lintel_material(std::string_view name) {
  const auto* found = std::ranges::find(lintel_materials, name, &LintelMaterial::name);
  if (found == lintel_materials.end())
    throw std::out_of_range("no lintel material " + std::string(name));
  return *found;
}

std::optional<double> usual_subgrade_modulus(std::string_view ground) {
  const auto* found = std::ranges::find(moduli, ground, &UsualModulus::ground);
  if (found == moduli.end()) return std::nullopt;
  return found->MN_per_m3 * 1e-3;
}

}  // namespace deadshore::io
