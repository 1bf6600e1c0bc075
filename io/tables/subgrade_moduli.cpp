#include "io/tables/subgrade_moduli.h"

#include <algorithm>
#include <array>

namespace deadshore::io {

namespace {

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

std::optional<double> usual_subgrade_modulus(std::string_view ground) {
  const auto* found = std::find_if(moduli.begin(), moduli.end(), [&](const UsualModulus& modulus) {
    return modulus.ground == ground;
  });
  if (found == moduli.end()) return std::nullopt;
  return found->MN_per_m3 * 1e-3;
}

}  // namespace deadshore::io
