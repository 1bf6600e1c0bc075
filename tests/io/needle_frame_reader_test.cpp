#include "io/error.h"
#include "io/job/job_reader.h"
#include "io/tables/member_tables.h"
#include "io/tables/usual_values.h"
#include "tests/io/core_keys.h"
#include "tests/io/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <string>
#include <variant>

namespace deadshore::io {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;

constexpr const char* section_line = "section = \"uc 203x203x46\"";

solver::Job read_with(const std::string& old_part, const std::string& new_part) {
  return parse_job(with(framed_keys(), old_part, new_part), "yard.toml");
}

solver::NeedleFrame frame_with(const std::string& member_lines) {
  return read_with(section_line, member_lines).needle_frames.at(0);
}

const solver::SteelMember& steel_of(const solver::NeedleFrame& frame) {
  return std::get<solver::SteelMember>(frame.member);
}

TEST(NeedleFrameReader, TakesASectionOfTheTables) {
  const solver::Job job = parse_job(framed_keys(), "yard.toml");
  ASSERT_EQ(job.needle_frames.size(), 1U);
  const solver::NeedleFrame& frame = job.needle_frames[0];
  EXPECT_EQ(frame.name, "F1");
  EXPECT_EQ(steel_of(frame).section.name, "UC 203x203x46");
  EXPECT_EQ(steel_of(frame).grade, solver::SteelGrade::s275);
  EXPECT_EQ(steel_of(frame).f_y, 275.0);
  EXPECT_EQ(frame.overhang, 150.0);
  EXPECT_EQ(frame.packing.thickness, 0.0);
  EXPECT_THAT(frame.leaves, IsEmpty());
}

TEST(NeedleFrameReader, NeedlesPointAtTheirFrameAndBearOverItsWidth) {
  const solver::Job job = parse_job(framed_keys(), "yard.toml");
  EXPECT_EQ(job.needles.at(0).frame, 0U);
  EXPECT_EQ(job.needles.at(0).bearing_width, 203.6);
  EXPECT_EQ(job.needles.at(1).frame, 0U);
  EXPECT_EQ(job.needles.at(1).bearing_width, 150.0);
}

TEST(NeedleFrameReader, ANeedleOfGivenStiffnessHasNoFrame) {
  const solver::Job job = parse_job(core_keys(), "yard.toml");
  EXPECT_FALSE(job.needles.at(0).frame.has_value());
  EXPECT_THAT(job.needle_frames, IsEmpty());
}

TEST(NeedleFrameReader, ReadsPropsWithTheirDefaults) {
  const solver::Job job = parse_job(framed_keys(), "yard.toml");
  ASSERT_EQ(job.needle_frames.at(0).props.size(), 2U);
  const solver::NeedleProp& outer = job.needle_frames[0].props[0];
  EXPECT_EQ(outer.mark, "outer");
  EXPECT_EQ(outer.side, solver::PropSide::outside);
  EXPECT_EQ(outer.action, solver::PropAction::up);
  EXPECT_EQ(outer.distance, 600.0);
  EXPECT_EQ(outer.level, -150.0);
  EXPECT_EQ(outer.prop.name, "B35");
  EXPECT_FALSE(outer.prop.supplier_table.has_value());
  const solver::SolePlate& sole = outer.footing.sole;
  EXPECT_EQ(sole.timber.section.b, 225.0);
  EXPECT_EQ(sole.timber.section.h, 75.0);
  EXPECT_EQ(sole.timber.strength_class.name, "C24");
  EXPECT_EQ(sole.timber.service, solver::ServiceClass::three);  // lies in the open
  EXPECT_EQ(sole.length, 900.0);
  EXPECT_EQ(sole.prop_base, 120.0);

  const solver::NeedleProp& inner = job.needle_frames[0].props[1];
  EXPECT_EQ(inner.mark, "inner");
  EXPECT_EQ(inner.distance, 500.0);
  EXPECT_EQ(inner.level, 0.0);
  EXPECT_EQ(inner.footing.sole.timber.service, solver::ServiceClass::two);
}

TEST(NeedleFrameReader, GroundOfTheTablesIsAsStiffAsItsKindUnlessSaid) {
  const solver::Footing footing =
      parse_job(framed_keys(), "yard.toml").needle_frames.at(0).props.at(0).footing;
  EXPECT_EQ(footing.ground.name, "stiff clay");
  EXPECT_EQ(footing.ground.presumed_bearing, 0.150);
  EXPECT_EQ(footing.subgrade_modulus, 0.016);
  const solver::Job said =
      read_with(R"("stiff clay")", "\"Stiff Clay\"\nsubgrade_modulus = \"40000 kN/m3\"");
  EXPECT_EQ(said.needle_frames.at(0).props.at(0).footing.subgrade_modulus, 0.040);
}

TEST(NeedleFrameReader, GroundMayBeGivenOutright) {
  const solver::Footing footing =
      parse_job(framed_keys(), "yard.toml").needle_frames.at(0).props.at(1).footing;
  EXPECT_EQ(footing.ground.presumed_bearing, 0.150);
  EXPECT_FALSE(footing.ground.granular);
  EXPECT_EQ(footing.subgrade_modulus, 0.050);
  EXPECT_EQ(footing.suspended_floor, "");
}

TEST(NeedleFrameReader, ASuspendedFloorNeedsNoGround) {
  const solver::Job job =
      read_with("ground_bearing   = \"150 kN/m2\"\nsubgrade_modulus = \"50 MN/m3\"",
                R"(suspended_floor = "joists")");
  const solver::Footing footing = job.needle_frames.at(0).props.at(1).footing;
  EXPECT_EQ(footing.suspended_floor, "joists");
  EXPECT_FALSE(footing.ground.presumed_bearing.has_value());
}

TEST(NeedleFrameReader, ATailIsHeldDownByAPropThatActsDown) {
  std::string text =
      with(framed_keys(), R"(side             = "inside")",
           "side = \"outside\"\nacts = \"down\"\nmark = \"tail\"\nlevel = \"4.6 m\"");
  text = with(text, R"("0.5 m")", R"("1.8 m")");
  const solver::NeedleProp tail = parse_job(text, "yard.toml").needle_frames.at(0).props.at(1);
  EXPECT_EQ(tail.action, solver::PropAction::down);
  EXPECT_EQ(tail.mark, "tail");
  EXPECT_EQ(tail.level, 4600.0);
}

TEST(NeedleFrameReader, TakesSteelByItsDimensions) {
  const solver::NeedleFrame i = frame_with(
      "kind = \"I\"\ngrade = \"S355\"\nh = \"8 in\"\nb = \"203.2 mm\"\ntw = \"7.2 mm\"\n"
      "tf = \"11 mm\"\nr = \"10.2 mm\"");
  EXPECT_EQ(steel_of(i).section.h, 203.2);
  EXPECT_EQ(steel_of(i).section.r, 10.2);
  EXPECT_EQ(steel_of(i).f_y, 355.0);

  const solver::NeedleFrame box =
      frame_with("kind = \"rectangular hollow\"\nh = \"200 mm\"\nb = \"200 mm\"\ntw = \"10 mm\"");
  EXPECT_EQ(steel_of(box).section.kind, solver::SectionKind::rectangular_hollow);
  EXPECT_EQ(steel_of(box).section.tf, 10.0);

  const solver::NeedleFrame pipe =
      frame_with("kind = \"circular hollow\"\nh = \"193.7 mm\"\ntw = \"10 mm\"");
  EXPECT_EQ(steel_of(pipe).section.b, 193.7);
}

TEST(NeedleFrameReader, TakesTimber) {
  const solver::NeedleFrame frame = frame_with(
      "timber = \"D30\"\nwidth = \"225 mm\"\ndepth = \"225 mm\"\n"
      "duration = \"short term\"\nservice_class = \"3\"");
  const auto& timber = std::get<solver::TimberMember>(frame.member);
  EXPECT_EQ(timber.strength_class.f_m_k, 30.0);  // EN 338
  EXPECT_EQ(timber.section.b, 225.0);
  EXPECT_EQ(timber.duration, solver::LoadDuration::short_term);
  EXPECT_EQ(timber.service, solver::ServiceClass::three);
  EXPECT_EQ(frame.props.at(0).footing.sole.timber.duration, solver::LoadDuration::short_term);

  const solver::NeedleFrame usual =
      frame_with("timber = \"C24\"\nwidth = \"225 mm\"\ndepth = \"225 mm\"");
  EXPECT_EQ(std::get<solver::TimberMember>(usual.member).duration,
            solver::LoadDuration::medium_term);
  EXPECT_EQ(std::get<solver::TimberMember>(usual.member).service, solver::ServiceClass::three);
}

TEST(NeedleFrameReader, ReadsPackingAndLeaves) {
  const solver::NeedleFrame frame = frame_with(
      std::string(section_line) +
      "\npacking_thickness = \"1 in\"\npacking_E = \"5 GPa\"\npacking_strength = \"10 N/mm2\"\n"
      "leaves = [[\"0 mm\", \"102 mm\"], [\"152 mm\", \"252 mm\"]]");
  EXPECT_EQ(frame.packing.thickness, 25.4);
  EXPECT_EQ(frame.packing.E, 5000.0);
  EXPECT_EQ(frame.packing.strength, 10.0);
  ASSERT_EQ(frame.leaves.size(), 2U);
  EXPECT_EQ(frame.leaves[1].from, 152.0);
  EXPECT_EQ(frame.leaves[1].to, 252.0);
}

TEST(NeedleFrameReader, ASuppliersTableGoesWithTheProp) {
  const solver::Job job = read_with(
      R"(prop           = "B35")",
      "prop = \"B35\"\ncapacity = { source = \"sheet\", extension = [\"2 m\", \"10 ft\"], "
      "load = [\"30 kN\", \"20000 N\"] }");
  const auto& table = job.needle_frames.at(0).props.at(0).prop.supplier_table;
  ASSERT_TRUE(table.has_value());
  EXPECT_EQ(table->source, "sheet");
  ASSERT_EQ(table->rows.size(), 2U);
  EXPECT_EQ(table->rows[1].extension, 3048.0);
  EXPECT_EQ(table->rows[1].load, 20000.0);
}

TEST(NeedleFrameReader, OffersSectionsByRisingMassAndEveryProp) {
  const solver::Job job = parse_job(framed_keys(), "yard.toml");
  const MemberTables tables = built_in_member_tables();
  EXPECT_EQ(job.prop_choices.size(), tables.props.size());
  const auto is_i = [](const SteelRow& row) {
    return row.section.kind == solver::SectionKind::i_section;
  };
  EXPECT_EQ(static_cast<std::ptrdiff_t>(job.section_choices.size()),
            std::count_if(tables.steel.begin(), tables.steel.end(), is_i));
  EXPECT_TRUE(std::is_sorted(job.section_choices.begin(), job.section_choices.end(),
                             [](const auto& a, const auto& b) {
                               return solver::properties_of(a).mass < solver::properties_of(b).mass;
                             }));
}

TEST(SubgradeModuli, EveryGroundThatMayBePresumedHasOne) {
  int presumed = 0;
  for (const solver::Ground& ground : built_in_member_tables().grounds) {
    if (!ground.presumed_bearing) continue;
    ++presumed;
    EXPECT_TRUE(usual_subgrade_modulus(ground.name).has_value()) << ground.name;
  }
  EXPECT_GT(presumed, 5);
  EXPECT_FALSE(usual_subgrade_modulus("made ground").has_value());
}

TEST(CheckRulesReader, DefaultsArePartialFactorsOfTheUnitedKingdom) {
  const solver::CheckRules rules = parse_job(core_keys(), "yard.toml").check_rules;
  EXPECT_EQ(rules.basis.method, solver::SafetyMethod::partial_factors);
  EXPECT_EQ(rules.combination, solver::Combination::eq_6_10);
  EXPECT_EQ(rules.factors.gamma_G, 1.35);  // UK NA to EN 1990, Table NA.A1.2(B)
  EXPECT_EQ(rules.factors.gamma_Q, 1.5);
  EXPECT_EQ(rules.basis.gamma_masonry, 3.0);
  EXPECT_EQ(rules.prop_basis, solver::SafeLoadBasis::lower_of_both);
  const solver::CheckRules empty = read_with("basis = \"partial factors\"", "").check_rules;
  EXPECT_EQ(empty.factors.gamma_G, rules.factors.gamma_G);
  EXPECT_EQ(empty.basis.gamma_masonry, rules.basis.gamma_masonry);
}

TEST(CheckRulesReader, TakesOwnFactorsAndPropBasis) {
  const solver::CheckRules rules =
      read_with("basis = \"partial factors\"",
                "combination = \"6.10a or 6.10b\"\ngamma_G = 1.2\ngamma_Q = 1.6\n"
                "gamma_masonry = 2.5\nprop_basis = \"EN 1065\"")
          .check_rules;
  EXPECT_EQ(rules.combination, solver::Combination::eq_6_10a_or_b);
  EXPECT_EQ(rules.factors.gamma_G, 1.2);
  EXPECT_EQ(rules.factors.gamma_Q, 1.6);
  EXPECT_EQ(rules.basis.gamma_masonry, 2.5);
  EXPECT_EQ(rules.prop_basis, solver::SafeLoadBasis::en_1065);
}

TEST(CheckRulesReader, PermissibleStressesGoWithUnfactoredLoads) {
  const solver::CheckRules rules =
      read_with("\"partial factors\"", "\"permissible stresses\"").check_rules;
  EXPECT_EQ(rules.basis.method, solver::SafetyMethod::permissible);
  EXPECT_EQ(rules.combination, solver::Combination::unfactored);
  EXPECT_EQ(rules.basis.gamma_masonry, solver::permissible_stresses().gamma_masonry);
}

TEST(OwnTables, AreReadFromBesideTheJob) {
  const test::ScratchFolder folder;
  std::ofstream(folder.path() / "yard_sections.toml")
      << "[[steel_group]]\nkind = \"I\"\nsource = \"measured on site\"\n"
         "rows = [{ name = \"found beam\", h = 200, b = 150, tw = 8, tf = 12, r = 10 }]\n";
  std::string text = with(framed_keys(), "[wall]", "tables = [\"yard_sections.toml\"]\n[wall]");
  text = with(text, section_line, "section = \"found beam\"");
  std::ofstream(folder.path() / "yard.toml") << with(text, R"("150 mm")", R"("140 mm")");
  const solver::Job job = read_job(folder.path() / "yard.toml");
  EXPECT_EQ(steel_of(job.needle_frames.at(0)).section.b, 150.0);
  EXPECT_TRUE(std::any_of(job.section_choices.begin(), job.section_choices.end(),
                          [](const auto& section) { return section.name == "found beam"; }));
}

TEST(OwnTables, ThatAreUnsoundAreRefusedAtTheirOwnLine) {
  const test::ScratchFolder folder;
  std::ofstream(folder.path() / "bad.toml") << "[[prop_group]]\nsource = \"x\"\nouter = [60, 3]\n";
  std::ofstream(folder.path() / "yard.toml")
      << with(framed_keys(), "[wall]", "tables = [\"bad.toml\"]\n[wall]");
  try {
    static_cast<void>(read_job(folder.path() / "yard.toml"));
    FAIL() << "read without complaint";
  } catch (const InputError& error) {
    EXPECT_THAT(error.what(), HasSubstr("bad.toml:1: prop_group[0]"));
  }
}

}  // namespace
}  // namespace deadshore::io
