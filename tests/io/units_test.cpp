#include "io/job/units.h"

#include <gtest/gtest.h>

#include <string>

namespace deadshore::io {
namespace {

class Quantity : public ::testing::Test {
 protected:
  double length(const char* text) const { return units_.parse(text, Dimension::length); }
  double parse(const char* text, Dimension due) const { return units_.parse(text, due); }
  std::string refusal(const char* text, Dimension due) const {
    try {
      return "read as " + std::to_string(units_.parse(text, due));
    } catch (const UnitError& error) {
      return error.what();
    }
  }

 private:
  Units units_;
};

// An inch is 25.4 mm, a pound 0.45359237 kg: the international yard and pound, 1959.
// Standard gravity is 9.80665 m/s2: 3rd CGPM, 1901.
constexpr double pound_force = 0.45359237 * 9.80665;

TEST_F(Quantity, LengthsAreInMillimetres) {
  EXPECT_EQ(length("5.6 m"), 5600.0);
  EXPECT_EQ(length("215 mm"), 215.0);
  EXPECT_EQ(length("21.5 cm"), 215.0);
  EXPECT_EQ(length("8.5 in"), 215.9);
  EXPECT_EQ(length("6 in"), 152.4);
  EXPECT_EQ(length("18 ft"), 5486.4);
  EXPECT_EQ(length("18 feet"), 5486.4);
  EXPECT_EQ(length("2 yd"), 1828.8);
}

TEST_F(Quantity, ForcesAreInNewtons) {
  EXPECT_EQ(parse("6.5 kN", Dimension::force), 6500.0);
  EXPECT_DOUBLE_EQ(parse("450 kgf", Dimension::force), 450 * 9.80665);
  EXPECT_NEAR(parse("1000 lbf", Dimension::force), 1000 * pound_force, 1e-9);
  EXPECT_NEAR(parse("2 kip", Dimension::force), 2000 * pound_force, 1e-8);
}

TEST_F(Quantity, LineLoadsAreInNewtonsPerMillimetre) {
  EXPECT_EQ(parse("3.1 kN/m", Dimension::force_per_length), 3.1);
  EXPECT_EQ(parse("20 kN/mm", Dimension::stiffness), 20000.0);
  EXPECT_DOUBLE_EQ(parse("450 kgf/m", Dimension::force_per_length), 4.4129925);
  EXPECT_NEAR(parse("210 lbf/ft", Dimension::force_per_length), 210 * pound_force / 304.8, 1e-11);
}

TEST_F(Quantity, StressesAreInNewtonsPerSquareMillimetre) {
  EXPECT_EQ(parse("1500 MPa", Dimension::stress), 1500.0);
  EXPECT_EQ(parse("1.5 GPa", Dimension::stress), 1500.0);
  EXPECT_EQ(parse("50 kN/m2", Dimension::stress), 0.05);
  EXPECT_NEAR(parse("350 psi", Dimension::stress), 350 * pound_force / (25.4 * 25.4), 1e-11);
}

TEST_F(Quantity, AnglesAreInDegreesAndNoPureNumbers) {
  for (const char* text : {"30 degrees", "30 degree", "30 deg", "30 \u00b0"}) {
    EXPECT_EQ(parse(text, Dimension::angle), 30.0) << text;
  }
  EXPECT_NEAR(parse("1 rad", Dimension::angle), 57.29577951308, 1e-9);
  EXPECT_EQ(refusal("30 %", Dimension::angle), "a pure number");
  EXPECT_EQ(refusal("30 percent", Dimension::angle), "a pure number");
  EXPECT_EQ(refusal("30 m/m", Dimension::angle), "a pure number");
  EXPECT_EQ(refusal("30 m", Dimension::angle), "a length");
}

TEST_F(Quantity, AreasAreInSquareMillimetres) {
  EXPECT_EQ(parse("1.6 m2", Dimension::area), 1.6e6);
  EXPECT_EQ(parse("10 ft2", Dimension::area), 929030.4);
  EXPECT_EQ(refusal("1.6 m", Dimension::area), "a length");
}

TEST_F(Quantity, AWeightMayBeAForceOrAMass) {
  EXPECT_EQ(parse("3.2 kN", Dimension::weight), 3200.0);
  EXPECT_DOUBLE_EQ(parse("180 kgf", Dimension::weight), 180 * 9.80665);
  EXPECT_DOUBLE_EQ(parse("180 kg", Dimension::weight), 180 * 9.80665);
  EXPECT_NEAR(parse("400 lb", Dimension::weight), 400 * pound_force, 1e-9);
  EXPECT_EQ(refusal("180 kg", Dimension::force), "a mass");
  EXPECT_EQ(refusal("180 kg/m2", Dimension::weight), "a mass per area");
}

TEST_F(Quantity, UnitWeightsAreInNewtonsPerCubicMillimetre) {
  EXPECT_EQ(parse("19 kN/m3", Dimension::force_per_volume), 19.0e-6);
  EXPECT_NEAR(parse("120 lbf/ft3", Dimension::force_per_volume),
              120 * pound_force / (304.8 * 304.8 * 304.8), 1e-17);
}

TEST_F(Quantity, PowersAndQuotientsMayBeSpeltInManyWays) {
  for (const char* text : {"2.4 N/mm2", "2.4 N/mm^2", "2.4 N/mm²", "2.4 N mm-2", "2.4 N·mm-2",
                           "2.4 N.mm-2", "2.4 N*mm^-2", "2.4 N/mm/mm", "2.4 N/(mm mm)"}) {
    EXPECT_EQ(parse(text, Dimension::stress), 2.4) << text;
  }
  EXPECT_EQ(parse("19 kN m-3", Dimension::force_per_volume), 19.0e-6);
  EXPECT_EQ(parse("3.1 kN m-1", Dimension::force_per_length), 3.1);
}

TEST_F(Quantity, SpacesAndSignsAroundTheNumberDoNotMatter) {
  EXPECT_EQ(length("215mm"), 215.0);
  EXPECT_EQ(length("  215  mm "), 215.0);
  EXPECT_EQ(length("+215 mm"), 215.0);
  EXPECT_EQ(length("2.15e2 mm"), 215.0);
  EXPECT_EQ(length("-3 mm"), -3.0);
}

TEST_F(Quantity, TheSameSizeInAnyUnitIsTheSameNumber) {
  // The nearest feature lines of a mesh must not differ by the last bit.
  for (int inches = 1; inches <= 400; ++inches) {
    const std::string in = std::to_string(inches) + " in";
    const std::string tenths_of_mm = std::to_string(inches * 254) + "e-1 mm";
    EXPECT_EQ(length(in.c_str()), length(tenths_of_mm.c_str())) << in;
  }
}

TEST_F(Quantity, AWrongDimensionIsNamedInWords) {
  EXPECT_EQ(refusal("1.4 kN", Dimension::length), "a force");
  EXPECT_EQ(refusal("1.4 m", Dimension::force), "a length");
  EXPECT_EQ(refusal("1.4 m2", Dimension::force), "an area");
  EXPECT_EQ(refusal("1.4 kN/m2", Dimension::force_per_length), "a force per area");
  EXPECT_EQ(refusal("1.4 kN m", Dimension::force), "a moment");
  EXPECT_EQ(refusal("1900 kg/m3", Dimension::force_per_volume), "a mass per volume");
  EXPECT_EQ(refusal("1.4 s", Dimension::length), "a time");
  EXPECT_EQ(refusal("1.4 A", Dimension::length), "which measures something else");
}

TEST_F(Quantity, UnitsThatAreNoPlainMultipleAreRefused) {
  EXPECT_EQ(refusal("3 m-1", Dimension::length), "which measures something else");
  EXPECT_EQ(refusal("3 lg(re mm)", Dimension::length), "which measures something else");
}

TEST_F(Quantity, OneNumberAndOneUnitAreDue) {
  for (const char* text : {"1 ft 6 in", "8 1/2 in", "2 m/1000", "2 3 m", "2 m @ 5"}) {
    EXPECT_EQ(refusal(text, Dimension::length), "more than one number and one unit") << text;
  }
  EXPECT_EQ(refusal("2.4", Dimension::length), "a number without a unit");
  EXPECT_EQ(refusal("m", Dimension::length), "which does not start with a number");
  EXPECT_EQ(refusal("", Dimension::length), "which does not start with a number");
  EXPECT_EQ(refusal("2,4 m", Dimension::length), "a number with a comma (write a decimal point)");
}

TEST_F(Quantity, WrongCapitalsBringTheUsualUnitToMind) {
  EXPECT_EQ(refusal("6 KN", Dimension::force), "whose unit is not known (perhaps \"kN\")");
  EXPECT_EQ(refusal("6 Mpa", Dimension::stress), "whose unit is not known (perhaps \"MPa\")");
  EXPECT_EQ(refusal("6 smoots", Dimension::length), "whose unit is not known");
}

TEST_F(Quantity, NumbersThatAreNotFiniteAreRefused) {
  for (const char* text : {"inf m", "nan m", "1e999 m", "1e308 km"}) {
    EXPECT_THROW(static_cast<void>(length(text)), UnitError) << text;
  }
}

}  // namespace
}  // namespace deadshore::io
