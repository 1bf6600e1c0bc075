#include "io/job/job_reader.h"
#include "tests/io/core_keys.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <variant>

namespace deadshore::io {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

std::string shored_keys() {
  return test_data("shored_keys.toml");
}

solver::ShoreFrame frame_of(const std::string& text, std::size_t shore = 0) {
  return parse_job(text, "yard.toml").dead_shores.at(shore).frame.value();
}

const solver::PropRow& props_of(const solver::ShoreFrame& frame) {
  return std::get<solver::PropRow>(frame.uprights);
}

TEST(ShoreFrameReader, TakesARowOfProps) {
  const solver::ShoreFrame frame = frame_of(shored_keys());
  EXPECT_EQ(frame.distance, 700.0);
  EXPECT_EQ(frame.x.from, 800.0);
  EXPECT_EQ(frame.x.to, 4200.0);
  EXPECT_EQ(frame.joist_span, 3800.0);
  EXPECT_EQ(frame.joist_width, 50.0);
  EXPECT_EQ(frame.joist_level, 2500.0);
  EXPECT_EQ(frame.floor_level, 0.0);
  const auto& head = std::get<solver::TimberMember>(frame.head);
  EXPECT_EQ(head.strength_class.name, "C24");
  EXPECT_EQ(head.section.b, 100.0);
  EXPECT_EQ(head.section.h, 150.0);
  EXPECT_EQ(head.duration, solver::LoadDuration::medium_term);
  EXPECT_EQ(props_of(frame).prop.name, "B30");
  EXPECT_EQ(props_of(frame).base, 120.0);
  EXPECT_THAT(props_of(frame).places, ElementsAre(1000.0, 2000.0, 3000.0, 4000.0));
}

TEST(ShoreFrameReader, TheSoleIsAsLongAsTheRowUnlessSaid) {
  const solver::Footing footing = frame_of(shored_keys()).footing;
  EXPECT_EQ(footing.sole.timber.section.b, 225.0);
  EXPECT_EQ(footing.sole.timber.section.h, 75.0);
  EXPECT_EQ(footing.sole.timber.strength_class.name, "C24");
  EXPECT_EQ(footing.sole.length, 3400.0);
  EXPECT_EQ(footing.ground.name, "stiff clay");
  EXPECT_GT(footing.subgrade_modulus, 0.0);
  const std::string line = "sole_thickness = \"75 mm\"";
  const std::string longer = with(shored_keys(), line, line + "\nsole_length = \"3.8 m\"");
  EXPECT_EQ(frame_of(longer).footing.sole.length, 3800.0);
}

TEST(ShoreFrameReader, TakesAStudWallOnASuspendedFloor) {
  const solver::ShoreFrame frame = frame_of(shored_keys(), 1);
  const auto& studs = std::get<solver::StudRow>(frame.uprights);
  EXPECT_EQ(studs.stud.strength_class.name, "C16");
  EXPECT_EQ(studs.stud.section.b, 47.0);
  EXPECT_EQ(studs.stud.section.h, 100.0);
  EXPECT_EQ(studs.spacing, 600.0);
  EXPECT_TRUE(studs.nogging);
  EXPECT_EQ(frame.floor_level, 2700.0);
  EXPECT_EQ(frame.footing.suspended_floor, "first floor");
}

TEST(ShoreFrameReader, JoistsOfTheShoreAreThoseOfItsFrame) {
  EXPECT_EQ(frame_of(shored_keys()).joist_spacing, 400.0);
  const std::string line = "joist_width    = \"50 mm\"";
  const std::string same = with(shored_keys(), line, line + "\njoist_spacing = \"40 cm\"");
  EXPECT_NEAR(frame_of(same).joist_spacing, 400.0, 1e-9);
}

TEST(ShoreFrameReader, PlacesAreLeftToBeProposed) {
  const std::string line = "places         = [\"1 m\", \"2 m\", \"3 m\", \"4 m\"]";
  const solver::ShoreFrame free = frame_of(with(shored_keys(), line, ""));
  EXPECT_THAT(props_of(free).places, IsEmpty());
  EXPECT_EQ(props_of(free).most_apart, 0.0);
  const solver::ShoreFrame closer = frame_of(with(shored_keys(), line, "most_apart = \"0.9 m\""));
  EXPECT_EQ(props_of(closer).most_apart, 900.0);
}

TEST(ShoreFrameReader, TakesAHeadPlateOfSteel) {
  const solver::ShoreFrame frame =
      frame_of(with(shored_keys(),
                    "timber         = \"C24\"\nwidth          = \"100 mm\"\ndepth          = "
                    "\"150 mm\"",
                    "section = \"uc 152x152x23\"\ngrade = \"S355\""));
  const auto& steel = std::get<solver::SteelMember>(frame.head);
  EXPECT_EQ(steel.section.name, "UC 152x152x23");
  EXPECT_EQ(steel.grade, solver::SteelGrade::s355);
}

TEST(ShoreFrameReader, AShoreMayHaveNone) {
  const solver::Job job = parse_job(test_data("staged_keys.toml"), "yard.toml");
  EXPECT_FALSE(job.dead_shores.at(0).frame.has_value());
}

}  // namespace
}  // namespace deadshore::io
