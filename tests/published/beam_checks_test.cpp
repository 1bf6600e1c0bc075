// The permanent beam's checks, through `check_beam`.
// (a) M_b,Rd of UB 254x146x31 in S275 under uniform moment, EN 1993-1-1 6.3.2.3 with UK values: L
//     1.5, 2.0, 3.0 m -> 105.9, 99.5, 85.5 kNm; calculated by hand from the formulas. Accepted: 1%.
// (b) M_c,Rd: W_pl 393 cm3 (section tables, from memory, unverified) x 275 N/mm2. Accepted: 0.5%.
// (c) C_1 and C_2 of simple beams: SN003, uniform load 1.127 and 0.454, central point load 1.348
//     and 0.630 (from memory, unverified).
// (d) EN 1993-1-5 6: UB 203x133x25 in S275 at its end, c 0, s_s 100 mm -> 216 kN; by hand from the
//     formulas. Accepted: the digits given.
// (e) EN 1996-1-1 6.1.3: 440 x 215 mm pad at the end of a 215 mm wall, h_c 2300 mm, f_d 2.057 N/mm2
//     -> l_efm 1104.0 mm, beta 1.0616, 206.6 kN; by hand from the formulas, read in a public copy.
//     Accepted: the digits given.
// (f) Deflection under plain masonry: span / 600, TMS 402 (from memory, unverified).
// (g) EN 1990 (6.10) with the UK's 1.35 and 1.5.

#include "solver/beam/beam_checks.h"

#include "solver/checks/member_buckling.h"
#include "solver/checks/steel_checks.h"
#include "tests/published/comparison.h"
#include "tests/solver/beam_samples.h"
#include "tests/solver/sample_sections.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <array>
#include <string>

namespace deadshore::solver {
namespace {

using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

constexpr Source en1993{Field::permanent_beam, Certainty::by_hand,
                        "EN 1993-1-1 6.3.2.3; EN 1993-1-5 6"};
constexpr Source tables{Field::permanent_beam, Certainty::memory, "Section tables: W_pl 393 cm3"};
constexpr Source en1996{Field::permanent_beam, Certainty::by_hand,
                        "EN 1996-1-1 6.1.3, read in a public copy"};
constexpr Source tms402{Field::permanent_beam, Certainty::memory,
                        "TMS 402: span / 600 under plain masonry"};

using testing::beam_job;
using testing::row_of;
using testing::weightless_beam_job;

std::vector<Check> checks_by_hand(const Job& job) {
  JobResult result;
  result.job = job;
  return check_beam(result);
}

Job evenly_loaded(double dead, double imposed) {
  Job job = weightless_beam_job();
  job.line_loads = {{"floor", 2700.0, false, {0.0, 6000.0}, dead, imposed}};
  return job;
}

TEST(PermanentBeamEn1993, BucklesSidewaysBetweenRestraintsAsWorkedByHand) {
  constexpr std::array<double, 3> spacing = {1500.0, 2000.0, 3000.0};
  constexpr std::array<double, 3> resistance = {105.9, 99.5, 85.5};
  for (std::size_t i = 0; i < spacing.size(); ++i) {
    Job job = evenly_loaded(10.0, 0.0);
    job.beam->restraint_spacing = spacing[i];
    verify({en1993,
            fmt::format("UB 254x146x31, S275, restrained every {} m: M_b,Rd", spacing[i] / 1e3),
            resistance[i], row_of(checks_by_hand(job), "B1", "lateral-torsional buckling").capacity,
            0.01 * resistance[i], "kNm"});
  }
}

TEST(PermanentBeamEn1993, BendsUpToItsPlasticMoment) {
  const Check bending = row_of(checks_by_hand(evenly_loaded(10.0, 5.0)), "B1", "bending");
  verify({tables, "UB 254x146x31, S275: M_c,Rd", 0.393 * 275.0, bending.capacity,
          0.005 * 0.393 * 275.0, "kNm"});
  // 1.35 x 10 + 1.5 x 5 = 21 kN/m over 3.225 m
  EXPECT_NEAR(bending.demand, 21.0 * 3.225 * 3.225 / 8.0, 1e-6);
}

TEST(PermanentBeamSn003, IsNeverBetterThanUnderAnEvenOrACentralLoadOnItsTop) {
  for (const SteelSection& section : {testing::uc_152x23, testing::uc_203x46, testing::ub_203x25,
                                      testing::ub_254x31, testing::ipe_330}) {
    Job job = evenly_loaded(10.0, 0.0);
    job.beam->member = steel_member(section, SteelGrade::s275);
    const double capacity =
        row_of(checks_by_hand(job), "B1", "lateral-torsional buckling").capacity;
    LateralSpan span;
    span.length = 3225.0;
    span.z_g = 0.5 * section.h;
    const auto resistance = [&](double C_1, double C_2) {
      span.C_1 = C_1;
      span.C_2 = C_2;
      return lateral_buckling(job.beam->member, span, partial_factors()).resistance / 1e6;
    };
    EXPECT_LE(capacity, resistance(1.127, 0.454)) << section.name;
    EXPECT_LE(capacity, resistance(1.348, 0.630)) << section.name;
  }
}

TEST(PermanentBeamEn1993, BearsOnItsWebAtTheEndAsWorkedByHand) {
  Job job = evenly_loaded(10.0, 0.0);
  job.beam->member = steel_member(testing::ub_203x25, SteelGrade::s275);
  job.beam->bearing = 100.0;
  const auto checks = checks_by_hand(job);
  for (const char* check : {"web bearing at the left bearing", "web bearing at the right bearing"})
    verify({en1993, std::string("UB 203x133x25, S275: ") + check, 216.0,
            row_of(checks, "B1", check).capacity, 0.5, "kN"});
}

/// N_Rdc of 6.1.3 at an end of the wall over a block of stress `a` mm long under a wall of 215 mm,
/// h_c 2300 mm, 1500 mm to the other end of the pier, kN.
double resistance_at_end(double a, double f_d) {
  const double spread = 0.5 * 2300.0 / std::tan(std::numbers::pi / 3.0);
  const double length = a + std::min(spread, 1500.0 - a);
  const double beta = std::clamp(1.5 - 1.1 * std::min(a / length, 0.45), 1.0, 1.25);
  return beta * a * 215.0 * f_d / 1000.0;
}

TEST(PermanentBeamEn1996, PressesThePierThroughItsPadstoneAsWorkedByHand) {
  Job job = evenly_loaded(10.0, 0.0);
  const PermanentBeam& beam = *job.beam;
  job.wall.cut.soffit =
      2300.0 + beam.padstone.depth + beam.member.section.h + beam.packing.thickness;
  job.line_loads.front().level = 4000.0;
  job.masonry.compressive_strength = 6.170;
  const auto checks = checks_by_hand(job);
  for (const char* pier : {"B1 left pier", "B1 right pier"}) {
    const Check row = row_of(checks, pier, "masonry under the padstone");
    // The reaction is in the middle of its 225 mm, less what the beam's end turns.
    const HandBeam hand = hand_beam(job);
    const double lift = std::min(1.0, 3.2 * hand.deflection / hand.span * 225.0);
    const double block = 225.0 * (1.0 - lift / 3.0);
    verify({en1996, std::string(pier) + ", padstone 440x215 under a block of stress: N_Rdc",
            resistance_at_end(block, 6.170 / 3.0), row.capacity, 0.1, "kN"});
    EXPECT_NEAR(row.demand, 1.35 * 10.0 * 3.450 / 2.0, 1e-6);
  }
}

TEST(PermanentBeamDeflection, IsHeldToAPartOfItsSpan) {
  Job job = evenly_loaded(10.0, 5.0);
  job.beam->deflection_ratio = 1.0 / masonry_limit;
  const Check row = row_of(checks_by_hand(job), "B1", "deflection");
  verify({tms402, "deflection allowed, span 3.225 m", 3225.0 / 600.0, row.capacity, 1e-9, "mm"});
  EXPECT_NEAR(row.demand, hand_beam(job).deflection, 1e-9);  // unfactored
}

}  // namespace
}  // namespace deadshore::solver
