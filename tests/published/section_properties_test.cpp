// Properties of hot-rolled sections from their dimensions, against the published tables: EN 10365
// and the rolling mills' tables of it; SCI P363 for the British sections,
// channels and hollow sections. Dimensions and published values from memory, unverified against a
// bought copy. Accepted: 1% for areas, second moments, moduli and mass, 3% for torsion and warping,
// where the published formulas differ.

#include "tests/published/comparison.h"
#include "tests/solver/sample_sections.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <string>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source tables{Field::steel_sections, Certainty::memory, "EN 10365 tables; SCI P363"};
constexpr Source hollow{Field::steel_sections, Certainty::memory, "EN 10210 tables; SCI P363"};

constexpr double published = 0.01;
constexpr double torsion = 0.03;

/// kg/m, cm2, cm4, cm3, cm3, cm4, cm4, cm6.
struct PublishedRow {
  SteelSection section;
  double mass, A, I_y, W_el_y, W_pl_y, I_z, I_t, I_w;
};

class RolledSection : public ::testing::TestWithParam<PublishedRow> {};

TEST_P(RolledSection, PropertiesAreThePublishedOnes) {
  const PublishedRow& row = GetParam();
  const SteelProperties p = properties_of(row.section);
  EXPECT_NEAR(p.mass, row.mass, published * row.mass);
  EXPECT_NEAR(p.A / 1e2, row.A, published * row.A);
  verify({tables, row.section.name + ": I_y", row.I_y, p.I_y / 1e4, published * row.I_y, "cm4"});
  EXPECT_NEAR(p.W_el_y / 1e3, row.W_el_y, published * row.W_el_y);
  EXPECT_NEAR(p.W_pl_y / 1e3, row.W_pl_y, published * row.W_pl_y);
  EXPECT_NEAR(p.I_z / 1e4, row.I_z, published * row.I_z);
  verify({tables, row.section.name + ": I_t", row.I_t, p.I_t / 1e4, torsion * row.I_t, "cm4"});
  EXPECT_NEAR(p.I_w / 1e6, row.I_w, torsion * row.I_w);
}

constexpr SectionKind i_section = SectionKind::i_section;
const std::array<PublishedRow, 13> rows{{
    {testing::uc_152x23, 23.0, 29.25, 1250, 164, 182, 400, 4.63, 21180},
    {testing::uc_152x30, 30.0, 38.26, 1748, 222, 248, 560, 10.5, 30750},
    {testing::uc_203x46, 46.1, 58.73, 4568, 450, 497, 1548, 22.2, 142900},
    {{"UB 178x102x19", i_section, 177.8, 101.2, 4.8, 7.9, 7.6},
     19.1,
     24.26,
     1356,
     153,
     171,
     137,
     4.41,
     9848},
    {testing::ub_203x25, 25.1, 31.97, 2340, 230, 258, 308, 5.96, 29330},
    {testing::ub_254x31, 31.1, 39.68, 4413, 351, 393, 448, 8.55, 65880},
    {{"HEA 100", i_section, 96, 100, 5, 8, 12}, 16.7, 21.24, 349.2, 72.8, 83.0, 133.8, 5.24, 2581},
    {{"HEA 140", i_section, 133, 140, 5.5, 8.5, 12},
     24.7,
     31.42,
     1033,
     155.4,
     173.5,
     389.3,
     8.13,
     15060},
    {{"IPE 160", i_section, 160, 82, 5, 7.4, 9},
     15.8,
     20.09,
     869.3,
     108.7,
     123.9,
     68.3,
     3.60,
     3959},
    {{"IPE 200", i_section, 200, 100, 5.6, 8.5, 12},
     22.4,
     28.48,
     1943,
     194.3,
     220.6,
     142.4,
     6.98,
     12990},
    {{"IPE 240", i_section, 240, 120, 6.2, 9.8, 15},
     30.7,
     39.12,
     3892,
     324.3,
     366.6,
     283.6,
     12.9,
     37390},
    {testing::ipe_330, 49.1, 62.6, 11770, 713, 804, 788.1, 28.15, 199100},
    {testing::pfc_200x90, 29.7, 37.9, 2523, 252, 291, 314, 18.3, 19700},
}};
INSTANTIATE_TEST_SUITE_P(Rows, RolledSection, ::testing::ValuesIn(rows), [](const auto& row) {
  std::string name = row.param.section.name;
  std::replace(name.begin(), name.end(), ' ', '_');
  return name;
});

TEST(PublishedSections, WeakAxisOfAChannelIsThatOfTheTables) {
  const SteelProperties p = properties_of(testing::pfc_200x90);
  verify({tables, "PFC 200x90x30: W_el,z", 53.4, p.W_el_z / 1e3, published * 53.4, "cm3"});
  verify({tables, "PFC 200x90x30: W_pl,z", 94.5, p.W_pl_z / 1e3, 0.02 * 94.5, "cm3"});
}

TEST(PublishedSections, WeakAxisOfAnISectionIsThatOfTheTables) {
  const SteelProperties p = properties_of(testing::uc_203x46);
  EXPECT_NEAR(p.W_el_z / 1e3, 152.0, published * 152.0);
  verify({tables, "UC 203x203x46: W_pl,z", 231.0, p.W_pl_z / 1e3, published * 231.0, "cm3"});
  EXPECT_NEAR(p.i_y, 88.2, published * 88.2);
  verify({tables, "UC 203x203x46: i_z", 51.3, p.i_z, published * 51.3, "mm"});
}

TEST(PublishedSections, HollowSectionsAreThoseOfEn10210) {
  const SteelProperties square = properties_of(testing::shs_100x5);
  EXPECT_NEAR(square.A / 1e2, 18.7, published * 18.7);
  verify({hollow, "SHS 100x100x5: I_y", 279.0, square.I_y / 1e4, published * 279.0, "cm4"});
  EXPECT_NEAR(square.W_pl_y / 1e3, 66.4, published * 66.4);
  verify({hollow, "SHS 100x100x5: I_t", 439.0, square.I_t / 1e4, published * 439.0, "cm4"});

  const SteelProperties oblong =
      properties_of({"RHS 200x100x8", SectionKind::rectangular_hollow, 200, 100, 8, 8, 0});
  EXPECT_NEAR(oblong.A / 1e2, 44.8, published * 44.8);
  verify({hollow, "RHS 200x100x8: I_y", 2234.0, oblong.I_y / 1e4, published * 2234.0, "cm4"});
  EXPECT_NEAR(oblong.I_z / 1e4, 739.0, published * 739.0);
  verify({hollow, "RHS 200x100x8: W_pl,y", 282.0, oblong.W_pl_y / 1e3, published * 282.0, "cm3"});

  const SteelProperties round =
      properties_of({"CHS 114.3x5", SectionKind::circular_hollow, 114.3, 114.3, 5, 5, 0});
  EXPECT_NEAR(round.A / 1e2, 17.2, published * 17.2);
  verify({hollow, "CHS 114.3x5: I_y", 257.0, round.I_y / 1e4, published * 257.0, "cm4"});
  verify({hollow, "CHS 114.3x5: W_pl,y", 59.8, round.W_pl_y / 1e3, published * 59.8, "cm3"});
}

}  // namespace
}  // namespace deadshore::solver
