// Walls and works that must not pass, each with what a hand calculation says beside it.
#include "solver/beam/beam_checks.h"
#include "solver/checks/ground_checks.h"
#include "solver/checks/masonry_checks.h"
#include "solver/job/house_fields.h"
#include "solver/job/job_fields.h"
#include "solver/job/number_faults.h"
#include "solver/loads/point_bearing_checks.h"
#include "solver/members/prop_second_order.h"
#include "solver/needle/bracing_checks.h"
#include "solver/needle/needle_advice.h"
#include "solver/needle/needle_checks.h"
#include "solver/piers/footing_checks.h"
#include "solver/piers/pier_cuts.h"
#include "solver/study/envelope.h"
#include "solver/study/verdict.h"
#include "tests/solver/beam_samples.h"
#include "tests/solver/needle_samples.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

namespace deadshore::solver {
namespace {

using ::testing::HasSubstr;

constexpr NeedleSite thin_wall{215.0, 2350.0};

const Check& named(const std::vector<Check>& checks, const std::string& name) {
  const auto found =
      std::find_if(checks.begin(), checks.end(), [&](const Check& c) { return c.check == name; });
  if (found == checks.end()) throw std::logic_error("no check " + name);
  return *found;
}

// --- Design load --------------------------------------------------------------------------------

TEST(DesignLoad, IsTheLargestThatAnyMethodKnows) {
  // By hand 20 kN, analysed 21.5; 25 if no needle gave; 27 with the needles twice as stiff.
  JobResult result;
  result.job.needles.resize(1);
  result.job.needles[0].name = "N1";
  result.hand.needles = {{support_of(NeedleId{0}), {}, 20e3, {}, 20e3}};
  StageResult stage;
  stage.name = "cut";
  stage.state.cut_out = true;
  PanelResult analysis;
  analysis.needles = {{"N1", 0.0, 21.5e3, 0.0, 1.0}};
  stage.analyses = {analysis};
  result.stages = {stage};
  EXPECT_DOUBLE_EQ(envelope_of(result)[0].load, 21.5e3);

  NeedleComparison comparison;
  comparison.unyielding = 25e3;
  result.comparison = {comparison};
  EXPECT_DOUBLE_EQ(envelope_of(result)[0].load, 25e3);
  EXPECT_EQ(envelope_of(result)[0].method, "uncracked, if no needle gave");

  Sensitivity sensitivity;
  sensitivity.supports = {
      {support_of(NeedleId{0}), StageId{0}, 21.5e3, {{Unsure::needle_stiffness, 19e3, 27e3, {}}}}};
  result.sensitivities = {sensitivity};
  EXPECT_DOUBLE_EQ(envelope_of(result)[0].load, 27e3);
  EXPECT_THAT(envelope_of(result)[0].method, HasSubstr("stiffness of the needles"));

  result.hand.needles[0].nearby = 30e3;  // with a needle 50 mm beside its place
  EXPECT_DOUBLE_EQ(envelope_of(result)[0].load, 30e3);
}

// --- Verdict ------------------------------------------------------------------------------------

TEST(Verdict, CountsWhatFailsWhatNobodyLookedAtAndLoadOnNothing) {
  JobResult result;
  EXPECT_TRUE(verdict_of(result).holds());
  Check clearance;
  clearance.check = "room";
  clearance.unit = "mm";
  clearance.demand = 99.0;
  clearance.capacity = 100.0;
  Check bending = clearance;
  bending.check = "bending";
  bending.unit = "kNm";
  bending.demand = 60.0;
  result.checks = {clearance, bending};
  EXPECT_EQ(verdict_of(result).governs.value().check, "bending");  // a clearance is no strength
  EXPECT_TRUE(verdict_of(result).holds());
  result.checks.push_back(not_verified("floor", "none", "look first"));
  EXPECT_TRUE(verdict_of(result).nothing_fails());
  EXPECT_FALSE(verdict_of(result).holds());
  result.checks[1].demand = 120.0;
  EXPECT_THAT(objections(verdict_of(result)), ::testing::ElementsAre("1 check fails"));
  result.hand.load_total = 5e3;
  EXPECT_EQ(verdict_of(result).load_on_nothing, 5e3);
  EXPECT_THAT(objections(verdict_of(result)), ::testing::Contains(HasSubstr("reach no needle")));
}

// --- Needles ------------------------------------------------------------------------------------

TEST(NeedleBearing, CountsNoMoreThanTheJobGives) {
  // 60 mm of the 152 mm flange bear: 60 x 215 mm x 2.4 N/mm2 / 3.0 = 10.32 kN.
  MasonryAbove masonry{2.4, 800.0, 900.0, 3000.0};
  const NeedleDemand demand{"N1", "hand", "cut", 20000.0, 1.0};
  const double wide = named(check_needle(sample_needle(), thin_wall, demand, masonry, {}),
                            "masonry above the needle")
                          .utilisation();
  EXPECT_LT(wide, 1.0);
  masonry.bearing_width = 60.0;
  const auto checks = check_needle(sample_needle(), thin_wall, demand, masonry, {});
  const Check& narrow = named(checks, "masonry above the needle");
  EXPECT_NEAR(narrow.capacity, 10.32, 0.005);
  EXPECT_NEAR(narrow.utilisation(), 1.35 * 20.0 / 10.32, 0.005);
  EXPECT_FALSE(narrow.not_verified);

  NeedleFrame packed = sample_needle();
  packed.packing = {20.0, 1000.0, 5.0};
  const auto of_packing = check_needle(packed, thin_wall, demand, masonry, {});
  EXPECT_NEAR(named(of_packing, "packing under the wall").demand, 27000.0 / (60.0 * 215.0), 1e-3);
}

TEST(NeedleBearing, EachLeafOfACavityWallIsCheckedAsIfItHadAllFloors) {
  // Two leaves of 102 mm; floors bring 60% of 20 kN: a leaf may have 0.6 + 0.4 / 2 = 80% of it.
  NeedleFrame frame = sample_needle();
  frame.leaves = {{0.0, 102.0}, {152.0, 254.0}};
  MasonryAbove masonry{2.4, 800.0, 900.0, 3000.0};
  masonry.share_of_loads = 0.6;
  const NeedleDemand demand{"N1", "hand", "cut", 20000.0, 1.0};
  const auto checks = check_needle(frame, {254.0, 2350.0}, demand, masonry, {});
  const Check& leaf = named(checks, "masonry above the needle, leaf 2");
  EXPECT_NEAR(leaf.demand, 1.35 * 0.8 * 20.0, 1e-9);
  ConcentratedLoad alone{152.2, 102.0, 102.0, 800.0, 900.0, 3000.0, 0.0};
  EXPECT_NEAR(leaf.capacity * kN, concentrated_resistance(alone, 2.4, {}).resistance, 1.0);
}

TEST(OverloadedNeedle, IsAFailingCheckWithLoadAndLimit) {
  // A prop B35 at 2.1 m buckles at some 54 kN; 112 kN by hand is on two of them.
  const NeedleDemand demand{"N1", "hand", "cut", 112e3, 1.0};
  const MasonryAbove masonry{2.4, 800.0, 900.0, 3000.0};
  std::vector<Check> checks;
  ASSERT_NO_THROW(checks = check_needle(sample_needle(), thin_wall, demand, masonry, {}));
  const auto fails = [](const Check& check) { return !check.passes() && !check.not_verified; };
  EXPECT_TRUE(std::any_of(checks.begin(), checks.end(), fails));
  const NeedleDemand far_over{"N1", "hand", "cut", 1000e3, 1.0};
  ASSERT_NO_THROW(checks = check_needle(sample_needle(), thin_wall, far_over, masonry, {}));
  const Check& stands = named(checks, "frame stands");
  EXPECT_EQ(stands.member, "N1");
  EXPECT_DOUBLE_EQ(stands.demand, 1000.0);
  EXPECT_GT(stands.capacity, 20.0);
  EXPECT_LT(stands.capacity, 1000.0);
  EXPECT_FALSE(stands.passes());
}

TEST(SectionAdvice, NamesNoSectionWithACheckThatCouldNotBeMade) {
  // An 80 mm flange bears on less than the 90 mm that EN 1996-1-1 6.1.3 is for: no pass, no advice.
  const NeedleDemand demand{"N1", "hand", "cut", 9000.0, 1.0};
  const MasonryAbove masonry{2.4, 800.0, 900.0, 3000.0};
  const NeedleFrame frame = sample_needle();
  const SteelSection narrow{"narrow", SectionKind::i_section, 160.0, 82.0, 5.0, 7.4, 9.0};
  const std::vector<SteelSection> sections = {narrow};
  const auto advice = advise(frame, thin_wall, demand, masonry, {}, {sections, {}});
  for (const std::string& sentence : advice)
    EXPECT_THAT(sentence, ::testing::Not(HasSubstr("narrow")));
}

TEST(FrameBuckling, NamesTheClausesAndWhatIsCommonPractice) {
  const NeedleDemand demand{"N1", "hand", "cut", 20e3, 1.0};
  const auto checks =
      check_needle(sample_needle(), thin_wall, demand, {2.4, 800.0, 900.0, 3000.0}, {});
  EXPECT_THAT(named(checks, "frame buckling").clause, HasSubstr("common practice"));
  EXPECT_THAT(named(checks, "deflection").clause, ::testing::Not(HasSubstr("EN 1990")));
}

// --- Ground -------------------------------------------------------------------------------------

SolePlate small_sole() {
  SolePlate sole;
  sole.timber.section = {225.0, 75.0};
  sole.timber.strength_class = {"C24", 24.0, 21.0, 2.5, 4.0, 11000.0, 7400.0, 690.0, 350.0, 420.0};
  sole.length = 900.0;
  sole.prop_base = 120.0;
  return sole;
}

TEST(NarrowSoleOnSand, BearsWhatItsOwnWidthGivesAndNotThePresumedValue) {
  // 225 x 420 mm on the surface, gamma 18 kN/m3, phi' 38 degrees: N_q 48.93, N_gamma 74.90,
  // 0.5 x 18 x 0.225 x 74.90 x (1 - 0.3 x 225/420) = 127.3 kN/m2; a third of it is 42.4.
  EXPECT_NEAR(surface_bearing(225.0, 420.0, 18e-6, 38.0) / kN_per_m2, 127.3, 0.1);
  Ground sand{"compact sand", 300.0 * kN_per_m2, true, "BS 8004"};
  sand.friction_angle = 38.0;
  const double load = 147.0 * 0.225 * 0.420 * kN;  // 147 kN/m2
  const Check check = check_ground_pressure(small_sole(), sand, load);
  EXPECT_NEAR(check.demand, 147.0, 0.1);
  EXPECT_NEAR(check.capacity, 42.4, 0.1);
  EXPECT_NEAR(check.utilisation(), 3.46, 0.02);
}

TEST(NarrowSoleOnSand, OfUnknownFrictionIsNotVerified) {
  const Ground sand{"our sand", 300.0 * kN_per_m2, true, "given"};
  EXPECT_TRUE(check_ground_pressure(small_sole(), sand, 5000.0).not_verified);
}

TEST(Slab, IsNotVerifiedWithoutItsThickness) {
  Ground slab{"slab", 100.0 * kN_per_m2, false, "given"};
  slab.slab = true;
  EXPECT_TRUE(check_ground_pressure(small_sole(), slab, 5000.0).not_verified);
  EXPECT_FALSE(check_ground_pressure(small_sole(), slab, 5000.0).passes());
}

// --- Piers --------------------------------------------------------------------------------------

TEST(NarrowPier, IsCheckedWithSlendernessAreaAndEccentricityAlongTheWall) {
  // 440 x 215 mm, h_ef / t 10, f_k 2.4 / 3.0: Phi_m .838, area factor .7 + 3 x .0946 = .984:
  // .838 x 440 x 215 x .984 x .8 = 62.4 kN; 49.5 kN x 1.39 = 68.8 kN are 1.10 of it. Off its middle
  // along the wall by 105 mm 230 mm are left: 2.1.
  const LoadedWall nib{440.0, 215.0, 2150.0, 0.0, 0.0};
  const Check middle = check_loaded_wall(nib, 1.39 * 49.5e3, 2.4, {});
  EXPECT_NEAR(middle.capacity, 62.4, 0.1);
  EXPECT_NEAR(middle.utilisation(), 1.10, 0.01);
  LoadedWall off = nib;
  off.along = -105.0;
  EXPECT_NEAR(check_loaded_wall(off, 1.39 * 49.5e3, 2.4, {}).utilisation(), 2.11, 0.01);
}

TEST(NarrowPier, FailsWhereTheLoadIsOffItOrItIsTooSlender) {
  EXPECT_EQ(wall_resistance({440.0, 215.0, 2150.0, 230.0, 0.0}, 2.4, {}).resistance, 0.0);
  EXPECT_EQ(wall_resistance({4400.0, 100.0, 2800.0, 0.0, 0.0}, 2.4, {}).resistance, 0.0);
}

// A nib 440 mm wide and 2 m high, alone, in elements of 110 x 100 mm.
mesh::QuadMesh nib_mesh() {
  mesh::QuadMesh mesh;
  for (int row = 0; row <= 20; ++row)
    for (int i = 0; i <= 4; ++i) mesh.nodes.push_back({110.0 * i, 100.0 * row});
  mesh.regions = {{}};
  for (int row = 0; row < 20; ++row)
    for (int i = 0; i < 4; ++i) {
      const int a = 5 * row + i;
      mesh.connectivity.insert(mesh.connectivity.end(), {a, a + 1, a + 6, a + 5});
      mesh.region_of_quad.push_back(0);
    }
  return mesh;
}

TEST(PierCuts, FindForceAndMomentOfAStraightLineOfStress) {
  // Stress from 0 at the left to 1 N/mm2 at the right: 440 x 215 / 2 = 47.3 kN, a sixth of the
  // width off the middle.
  const mesh::QuadMesh mesh = nib_mesh();
  PanelResult analysis;
  for (int quad = 0; quad < mesh.quad_count(); ++quad)
    analysis.fields.quad_stress.push_back({0.0, -(110.0 * (quad % 4) + 55.0) / 440.0, 0.0});
  const std::vector<PierCut> cuts = pier_cuts(mesh, analysis, 215.0);
  ASSERT_EQ(cuts.size(), 20U);
  for (const PierCut& cut : cuts) {
    EXPECT_NEAR(cut.force, 47.3e3, 1.0);
    // The two outer elements take half of their slope from the one neighbour that they have.
    EXPECT_NEAR(cut.eccentricity(), 440.0 / 6.0, 1e-6);
  }
}

TEST(PierCuts, LeaveOutWhatIsOut) {
  const mesh::QuadMesh mesh = nib_mesh();
  PanelResult analysis;
  analysis.fields.quad_stress.assign(80, {0.0, -1.0, 0.0});
  analysis.fields.quad_out.assign(80, 0);
  for (int row = 0; row < 20; ++row)
    analysis.fields.quad_out[static_cast<std::size_t>(4 * row + 1)] = 1;
  const std::vector<PierCut> cuts = pier_cuts(mesh, analysis, 215.0);
  ASSERT_EQ(cuts.size(), 40U);
  EXPECT_NEAR(cuts[0].force, 110.0 * 215.0, 1e-6);
  EXPECT_NEAR(cuts[1].x.from, 220.0, 1e-9);
}

TEST(Footing, IsJudgedByTheChangeOfLoadUntilItIsGiven) {
  // 1 m of pier: 40 kN/m before, 43 or 60 after. A tenth more is commonly accepted: 44.
  JobResult result;
  result.job.wall.length = 2000.0;
  result.job.wall.cut = {1000.0, 2000.0, 2000.0};
  result.job.thickness = 215.0;
  result.hand.left_pier.items = {{WallMasonry{}, "masonry", 1.0, 1.0, 40e3}};
  result.hand.left_pier.total = 43e3;
  const Check little = check_footings(result).at(0);
  EXPECT_EQ(little.member, "left pier");
  EXPECT_NEAR(little.demand, 43.0, 1e-9);
  EXPECT_NEAR(little.capacity, 44.0, 1e-9);
  EXPECT_TRUE(little.passes());
  result.hand.left_pier.total = 60e3;
  const Check much = check_footings(result).at(0);
  EXPECT_TRUE(much.not_verified);
  EXPECT_THAT(much.caution, HasSubstr("40.0 kN/m before, 60.0 kN/m after"));
  // On a strip 450 mm wide: 133 kN/m2, over the 100 that it may bear.
  result.job.footings = {{PierSide::left, 450.0, 600.0, {"firm clay", 0.1, false, "given"}}};
  const Check known = check_footings(result).at(0);
  EXPECT_NEAR(known.demand, 133.3, 0.1);
  EXPECT_NEAR(known.utilisation(), 1.333, 0.001);
}

TEST(Footing, OnSandBearsWhatItsDepthAndWidthGive) {
  // phi' 30, gamma 18, 0.45 m wide, 0.6 m deep: 18 x .6 x 18.40 + .5 x 18 x .45 x 20.09 = 280; / 3.
  PierFooting footing{PierSide::left, 450.0, 600.0, {"sand", 0.2, true, "given"}};
  EXPECT_FALSE(footing_bearing(footing).has_value());
  footing.ground.friction_angle = 30.0;
  EXPECT_NEAR(footing_bearing(footing).value() / kN_per_m2, 280.1 / 3.0, 0.2);
}

// --- Beam ---------------------------------------------------------------------------------------

TEST(Padstone, CarriesABlockOfStressUnderItsReactionAndNotItsWholeLength) {
  // The reaction acts in the middle of the 150 mm that the beam bears on, at 75 mm from the jamb,
  // or a little nearer as the beam's end turns; without a wall on its tail the block is 150 mm long
  // at most, where the padstone's spread is 365 mm.
  Job job = testing::beam_job();
  job.masonry.unit_weight = 0.0;
  job.beam->padstone.unit_weight = 0.0;
  job.beam->bearing = 150.0;
  job.beam->padstone.length = 440.0;
  job.beam->padstone.depth = 215.0;
  const HandBeam hand = hand_beam(job);
  const double lift = std::min(1.0, 3.2 * hand.deflection / hand.span * 150.0);
  const double block = 2.0 * 150.0 * (0.5 - lift / 6.0);
  const Check row = testing::row_of(check_beam(testing::staged_result(job, {})), "B1 left pier",
                                    "masonry under the padstone");
  EXPECT_THAT(row.working, HasSubstr(fmt::format("on {:.0f} mm", block)));
  EXPECT_LE(row.capacity * kN,
            1.2501 * block * job.thickness * job.masonry.compressive_strength / 3.0);
}

TEST(Padstone, WallOnItsTailBringsTheBlockFurtherIn) {
  // On 225 mm of a 440 mm padstone 215 mm deep. The wall stands on the other 215 mm from the
  // padstone's top, under a beam of 251.4 mm and 25 mm of packing, to the wall's top at 5 m.
  Job job = testing::beam_job();
  const HandBeam hand = hand_beam(job);
  const double imposed = hand.load - hand.dead;
  const double R = hand.reaction_left * (1.35 * hand.dead + 1.5 * imposed) / hand.load;
  const double lift = std::min(1.0, 3.2 * hand.deflection / hand.span * 225.0);
  const double stone = 1.35 * 440.0 * 215.0 * 215.0 * 24e-6;
  const double tail = 215.0 * (5000.0 - 2400.0 + 25.0 + 251.4) * 215.0 * 19e-6;
  const double place =
      (R * 225.0 * (0.5 - lift / 6.0) + stone * 220.0 + tail * 332.5) / (R + stone + tail);
  const Check row = testing::row_of(check_beam(testing::staged_result(job, {})), "B1 left pier",
                                    "masonry under the padstone");
  EXPECT_NEAR(row.demand * kN, R + stone + tail, 1.0);
  EXPECT_THAT(row.working,
              HasSubstr(fmt::format("resultant at {:.0f} mm, on {:.0f} mm", place, 2.0 * place)));
}

TEST(NarrowBeam, UnderAThickWallFailsUntilItHasAPlate) {
  // One flange of 142 mm under 327 mm: 92 mm of brick overhang on each side, where 25 mm may.
  Job job = testing::beam_job();
  job.thickness = 327.0;
  job.beam->member.section.b = 142.0;
  const auto rows = [&] { return check_beam(testing::staged_result(job, {})); };
  const Check bare = testing::row_of(rows(), "B1", "overhang of the wall");
  EXPECT_NEAR(bare.demand, 92.5, 1e-9);
  EXPECT_FALSE(bare.passes());
  job.beam->plate_thickness = 10.0;
  EXPECT_TRUE(testing::rows_of(rows(), "B1", "overhang of the wall").empty());
  const Check plate = testing::row_of(rows(), "B1", "top plate beyond the flange");
  // 10^2 / 4 x 275 N/mm2 = 6.875 kNm/m.
  EXPECT_NEAR(plate.capacity, 6.875, 1e-9);
  EXPECT_GT(plate.demand, 0.0);
}

TEST(TwinBeams, HaveSeparatorsAndBoltsWorkedOutOnceTheirSpacingIsGiven) {
  Job job = testing::beam_job();
  job.beam->count = 2;
  const auto row = [&](const char* name) {
    return testing::row_of(check_beam(testing::staged_result(job, {})), "B1", name);
  };
  EXPECT_TRUE(row("bolts and separators").not_verified);
  job.beam->separator_spacing = 900.0;
  const Check bolts = row("bolts and separators");
  EXPECT_FALSE(bolts.not_verified);
  // M16 8.8: 0.6 x 800 x 0.78 x 201.1 mm2 / 1.25 = 60.2 kN in shear.
  EXPECT_THAT(bolts.working, HasSubstr("in shear 60.2 kN"));
  job.beam->separator_spacing = 2000.0;
  EXPECT_FALSE(row("separator spacing").passes());
}

TEST(YoungPacking, HasItsCharacteristicStrengthAtItsAgeAndTemperature) {
  // EN 1992-1-1 3.1.2(5), (6), f_ck 20, s .25: .598 x 28 - 8 = 8.75 at 3 days, 13.81 at 7.
  DryPacking packing;
  EXPECT_NEAR(strength_at(packing, 3.0), 8.75, 0.01);
  EXPECT_NEAR(strength_at(packing, 7.0), 13.81, 0.01);
  EXPECT_DOUBLE_EQ(strength_at(packing, 28.0), 20.0);
  EXPECT_EQ(strength_at(packing, 0.0), 0.0);
  // (B.10): a day at 5 degrees counts .478 / .998 of one at 20.
  EXPECT_NEAR(days_at_20_degrees(5.0), 0.479, 0.001);
  packing.temperature = 5.0;
  EXPECT_NEAR(strength_at(packing, 7.0), strength_at(DryPacking{}, 7.0 * days_at_20_degrees(5.0)),
              1e-12);
}

// --- Props --------------------------------------------------------------------------------------

TEST(PropOffItsAxis, BearsLessThanEn1065HasAndTheLowerCounts) {
  // A second-order run of B30 at 3.0 m, /1.65: 15.7, 13.7 and 11.0 kN at 10, 15 and 25 mm off its
  // axis, where EN 1065 / 1.65 has 13.74 and CIRIA TN79 15.
  const Prop b30{"B30", 1800.0, 3000.0, {60.3, 3.2}, {48.3, 3.2}, PropClass::b, {}, "invented"};
  const auto safe = [&](double e) { return eccentric_strength(b30, 3000.0, e) / 1.65 / kN; };
  EXPECT_NEAR(safe(10.0), 15.7, 0.1);
  EXPECT_NEAR(safe(15.0), 13.7, 0.1);
  EXPECT_NEAR(safe(25.0), 11.0, 0.1);
  EXPECT_NEAR(safe_load(b30, 3000.0).load / kN, 11.0, 0.1);
  EXPECT_NEAR(safe_load(b30, 3000.0, SafeLoadBasis::en_1065).load / kN, 13.74, 0.01);
  EXPECT_THAT(safe_load(b30, 3000.0).working, HasSubstr("e 25 mm"));
}

TEST(Bracing, IsForTwoAndAHalfPerCentOfWhatTheRowCarries) {
  // 40 kN on four props: 1.0 kN sideways, 1.41 kN in a diagonal at 45 degrees; 0.3 kN at a prop
  // of 12.
  const auto checks = check_bracing({}, {{PropSide::outside, 40e3, 12e3, 4}});
  ASSERT_EQ(checks.size(), 1U);
  EXPECT_EQ(checks[0].member, "outer props");
  EXPECT_NEAR(checks[0].demand, 1.414, 0.001);
  EXPECT_THAT(checks[0].working, HasSubstr("fixed for 0.30 kN"));
}

TEST(Bracing, TiedToNothingThatIsNamedIsNotVerified) {
  const std::vector<PropRowLoad> row = {{PropSide::outside, 40e3, 12e3, 4}};
  Bracing bracing;
  ASSERT_EQ(check_bracing(bracing, row).size(), 1U);
  EXPECT_TRUE(check_bracing(bracing, row)[0].not_verified);
  bracing.tied_to = "the party wall";
  EXPECT_FALSE(check_bracing(bracing, row)[0].not_verified);
  EXPECT_TRUE(check_bracing(bracing, row)[0].passes());
  // 400 kN: 14.1 kN in a diagonal is too much for a coupler, whatever is known of the tie.
  EXPECT_FALSE(check_bracing({}, {{PropSide::outside, 400e3, 12e3, 40}})[0].not_verified);
}

// --- Slips of a thousand ------------------------------------------------------------------------

TEST(SlipOfAThousand, IsRefusedWithTheUnitThatWasLikelyMeant) {
  // 19 N/m3, E in N/m2, ground in kN/mm2, a span in mm: each is a unit away from what it is.
  Masonry masonry{"brick", 19e-9, 1500.0, 0.2, 2.4, 0.05};
  const auto due = [](const auto& table, const auto& what) {
    FaultList faults;
    check_numbers(table, what, faults, "here");
    return faults.empty() ? std::string() : faults.front().due;
  };
  EXPECT_THAT(due(fields::masonry, masonry), HasSubstr("is the unit kN/m3?"));
  masonry.unit_weight = 19e-6;
  EXPECT_EQ(due(fields::masonry, masonry), "");
  masonry.E = 1500e-6;
  EXPECT_THAT(due(fields::masonry, masonry), HasSubstr("is the unit N/mm2?"));
  Floor floor;
  floor.span = 3.8;
  EXPECT_THAT(due(fields::floor, floor), HasSubstr("is the unit m?"));
  PierFooting footing{PierSide::left, 450.0, 600.0, {"ground", 150e3, false, "given"}};
  EXPECT_THAT(due(fields::footing, footing), HasSubstr("is the unit kN/m2?"));
}

// --- Point loads --------------------------------------------------------------------------------

TEST(PointLoad, PressesTheMasonryUnderItsBearing) {
  // 200 x 107.5 mm, far from any end, under 1.35 x 40 kN: beta is at most 1.5.
  Job job = testing::beam_job();
  job.point_loads = {{"purlin", 0.5 * job.wall.length, job.wall.top_at(0.0), 200.0, 40e3, 0.0}};
  const std::vector<Check> checks = check_point_bearings(job);
  ASSERT_EQ(checks.size(), 1U);
  EXPECT_EQ(checks[0].member, "purlin");
  EXPECT_NEAR(checks[0].demand, 54.0, 1e-9);
  EXPECT_LE(checks[0].capacity * kN,
            1.5 * 200.0 * 0.5 * job.thickness * job.masonry.compressive_strength / 3.0 + 1e-6);
  EXPECT_GT(checks[0].capacity, 0.0);
}

}  // namespace
}  // namespace deadshore::solver
