#include "solver/members/steel_section.h"

#include "solver/members/error.h"
#include "solver/members/hollow_section.h"
#include "solver/members/open_section.h"

#include <fmt/format.h>

#include <cmath>

namespace deadshore::solver {

namespace {

constexpr double steel_density = 7850e-9;  // kg/mm3

void require(const SteelSection& s, bool holds, const char* due) {
  if (holds) return;
  const std::string found =
      s.is_hollow() ? fmt::format("h {}, b {}, t {} mm", s.h, s.b, s.tw)
                    : fmt::format("h {}, b {}, tw {}, tf {}, r {} mm", s.h, s.b, s.tw, s.tf, s.r);
  throw MemberError(s.name, found, due);
}

void require_sound(const SteelSection& s) {
  const bool finite = std::isfinite(s.h) && std::isfinite(s.b) && std::isfinite(s.tw) &&
                      std::isfinite(s.tf) && std::isfinite(s.r);
  require(s, finite && s.h > 0.0 && s.b > 0.0 && s.tw > 0.0 && s.tf > 0.0 && s.r >= 0.0,
          "dimensions above 0 are due");
  switch (s.kind) {
    case SectionKind::i_section:
      require(s, 2.0 * (s.tf + s.r) < s.h && s.tw + 2.0 * s.r < s.b,
              "flanges, web and root radii must fit into depth and width");
      break;
    case SectionKind::channel:
      require(s, 2.0 * (s.tf + s.r) < s.h && s.tw + s.r < s.b,
              "flanges, web and root radii must fit into depth and width");
      break;
    case SectionKind::rectangular_hollow:
      require(s, s.tw == s.tf, "one wall thickness is due");
      require(s, 4.0 * s.tw < s.h && 4.0 * s.tw < s.b,
              "walls must be thinner than a quarter of depth and width");
      break;
    case SectionKind::circular_hollow:
      require(s, s.tw == s.tf && s.h == s.b, "one diameter and one wall thickness are due");
      require(s, 2.0 * s.tw < s.h, "the wall must be thinner than half the diameter");
      break;
  }
}

SteelProperties properties_by_kind(const SteelSection& section) {
  switch (section.kind) {
    case SectionKind::i_section:
      return i_section_properties(section);
    case SectionKind::channel:
      return channel_properties(section);
    case SectionKind::rectangular_hollow:
      return rectangular_hollow_properties(section);
    case SectionKind::circular_hollow:
      return circular_hollow_properties(section);
  }
  return {};
}

}  // namespace

SteelProperties properties_of(const SteelSection& section) {
  require_sound(section);
  SteelProperties p = properties_by_kind(section);
  p.mass = p.A * steel_density * 1000.0;
  p.i_y = std::sqrt(p.I_y / p.A);
  p.i_z = std::sqrt(p.I_z / p.A);
  return p;
}

}  // namespace deadshore::solver
