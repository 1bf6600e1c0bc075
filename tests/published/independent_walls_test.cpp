// Five walls in a general-purpose finite-element library, DOLFINx (version and date in
// independent_walls_recorded.json, which independent_walls.py beside this file writes). Both read
// the walls from independent_walls.json and share nothing else: other elements on another grid, the
// masonry and the needles given as an energy that the library differentiates.
// Accepted: every reaction within 0.5%, uncracked and cracked, on 8-node elements of 100 mm, but of
// 50 mm for the needle with slack. Its reaction is what is left of a settlement after the slack, so
// that an error of the settlement counts twice: cracked, 0.5% on 100 mm and 0.2% on 50. Corners
// make both codes close in with the first power of the size; carried on to none, that needle
// bears 12.14 kN by ours (100, 50 and 25 mm) and 12.15 kN by theirs (80 and 40 mm). The recorded
// values move by at most 0.15% between their own mesh and one of twice the size.

#include "io/files/whole_file.h"
#include "solver/panel/newton.h"
#include "solver/panel/recovery.h"
#include "solver/panel/wall_panel.h"
#include "tests/published/comparison.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <stdexcept>
#include <string>
#include <tuple>
#include <vector>

namespace deadshore::solver {
namespace {

using Json = nlohmann::json;
using mesh::QuadOrder;
using published::Certainty;
using published::Field;
using published::Source;
using published::verify;

Json read(const char* file) {
  return Json::parse(io::read_file(std::filesystem::path(DEADSHORE_PUBLISHED_DATA) / file));
}

mesh::WallShape shape_of(const Json& wall) {
  mesh::WallShape shape;
  shape.length = wall["length"];
  for (const Json& point : wall["top"]) shape.top.push_back({point[0], point[1]});
  shape.cut = {wall["cut"]["left"], wall["cut"]["right"], wall["cut"]["soffit"]};
  for (const Json& opening : wall["openings"]) {
    const std::string name = fmt::format("opening {}", shape.openings.size() + 1);
    shape.openings.push_back(
        {name, opening["left"], opening["sill"], opening["width"], opening["height"], 0.0});
    if (!opening.contains("lintel")) continue;
    const Json& lintel = opening["lintel"];
    shape.lintels.push_back(
        {"lintel of " + name, shape.openings.size() - 1, lintel["depth"], lintel["bearing"]});
  }
  return shape;
}

void add_lintels(const Json& wall, Job& job) {
  for (const Json& opening : wall["openings"]) {
    if (!opening.contains("lintel")) continue;
    const Json& lintel = opening["lintel"];
    job.lintels.push_back({job.wall.lintels[job.lintels.size()], "concrete", lintel["unit_weight"],
                           lintel["E"], lintel["nu"], job.thickness});
  }
}

void add_loads(const Json& wall, Job& job) {
  for (const Json& load : wall["line_loads"]) {
    const bool on_top = load["level"].is_string();
    const double level = on_top ? job.wall.height() : load["level"].get<double>();
    job.line_loads.push_back({fmt::format("line {}", job.line_loads.size() + 1),
                              level,
                              on_top,
                              {load["from"], load["to"]},
                              load["force"],
                              0.0});
  }
  for (const Json& load : wall["point_loads"])
    job.point_loads.push_back({fmt::format("point {}", job.point_loads.size() + 1), load["x"],
                               load["level"], load["bearing"], load["force"], 0.0});
}

Job job_of(const Json& wall) {
  Job job;
  job.title = wall["name"];
  job.wall = shape_of(wall);
  job.thickness = wall["thickness"];
  const Json& masonry = wall["masonry"];
  job.masonry = {"brick", masonry["unit_weight"],     masonry["E"], masonry["nu"],
                 2.4,     masonry["tensile_strength"]};
  if (wall["ends"] == "held") job.left_end = job.right_end = WallEnd::held;
  add_lintels(wall, job);
  add_loads(wall, job);
  for (const Json& needle : wall["needles"])
    job.needles.push_back({fmt::format("needle {}", job.needles.size() + 1), needle["x"],
                           needle["bearing"], needle["stiffness"], needle["slack"], 0.0});
  return job;
}

Json wall_named(const std::string& name) {
  const Json file = read("independent_walls.json");
  for (const Json& wall : file["walls"])
    if (wall["name"] == name) return wall;
  throw std::runtime_error("no wall " + name);
}

struct Reaction {
  std::string name;
  double force = 0.0;  ///< N
};
using Reactions = std::vector<Reaction>;

Reactions reactions_of(Job job, MasonryModel masonry, QuadOrder order, double size) {
  job.analysis.element = order;
  const mesh::WallMesh mesh = mesh_of(job, size);
  PanelModel model(mesh.quads, supports_of(job, mesh.quads));
  const PanelLoading loading = loading_of(job, model, masonry);
  Eigen::VectorXd u = model.start();
  EXPECT_TRUE(minimise(model, loading, u).converged);
  PanelResult result;
  add_reactions(job, model, loading, u, result);
  EXPECT_LT(result.equilibrium_error, 1e-8);
  Reactions reactions;
  for (const NeedleReaction& needle : result.needles)
    reactions.push_back({needle.name, needle.force});
  reactions.push_back({"base left", result.base_left});
  reactions.push_back({"base right", result.base_right});
  return reactions;
}

/// In the same order.
std::vector<double> recorded(const std::string& wall, MasonryModel masonry) {
  const Json file = read("independent_walls_recorded.json");
  const Json& found = file["walls"][wall][to_string(masonry)];
  std::vector<double> forces = found["needles"];
  forces.push_back(found["base_left"]);
  forces.push_back(found["base_right"]);
  return forces;
}

class IndependentWalls : public ::testing::TestWithParam<std::tuple<const char*, MasonryModel>> {};
INSTANTIATE_TEST_SUITE_P(Walls, IndependentWalls,
                         ::testing::Combine(::testing::Values("plain", "openings", "awkward bay",
                                                              "gable", "slack needle"),
                                            ::testing::Values(MasonryModel::uncracked,
                                                              MasonryModel::cracked)),
                         [](const auto& of) {
                           std::string name = std::get<0>(of.param);
                           std::ranges::replace(name, ' ', '_');
                           return name + "_" + to_string(std::get<1>(of.param));
                         });

TEST_P(IndependentWalls, ReactionsAgreeWithinHalfAPercent) {
  const auto& [name, masonry] = GetParam();
  const std::vector<double> theirs = recorded(name, masonry);
  const Json wall = wall_named(name);
  const double size = wall["mesh"];
  const Reactions ours = reactions_of(job_of(wall), masonry, QuadOrder::eight_node, size);
  ASSERT_EQ(ours.size(), theirs.size());
  const Json file = read("independent_walls_recorded.json");
  const Json& found = file["walls"][name];
  const std::string citation =
      fmt::format("{}, {} of {} mm, {}", found["library"].get<std::string>(),
                  found["element"].get<std::string>(), found["size"].get<double>(),
                  found["date"].get<std::string>());
  const Source source{Field::whole_walls, Certainty::library, citation};
  for (std::size_t i = 0; i < theirs.size(); ++i)
    verify(
        {source,
         fmt::format("{}, {}, 8-node of {} mm: {}", name, to_string(masonry), size, ours[i].name),
         theirs[i] / 1e3, ours[i].force / 1e3, 0.005 * theirs[i] / 1e3, "kN"});
}

TEST_P(IndependentWalls, AreRecordedFromAMeshThatIsFineEnough) {
  const auto& [name, masonry] = GetParam();
  const Json file = read("independent_walls_recorded.json");
  EXPECT_LT(file["walls"][name][to_string(masonry)]["change_from_twice_the_size"].get<double>(),
            0.0015);
}

/// Largest relative difference from the recorded reactions of the wall with openings.
double difference(MasonryModel masonry, QuadOrder order, double size) {
  const std::vector<double> theirs = recorded("openings", masonry);
  const Reactions ours = reactions_of(job_of(wall_named("openings")), masonry, order, size);
  double largest = 0.0;
  for (std::size_t i = 0; i < theirs.size(); ++i)
    largest = std::max(largest, std::abs(ours[i].force / theirs[i] - 1.0));
  return largest;
}

TEST(IndependentWall, UncrackedReactionsAgreeWithinHalfAPercentOnCoarserMeshesToo) {
  EXPECT_LT(difference(MasonryModel::uncracked, QuadOrder::four_node, 50.0), 0.005);
  EXPECT_LT(difference(MasonryModel::uncracked, QuadOrder::eight_node, 200.0), 0.005);
}

TEST(IndependentWall, CrackedReactionsOfEightNodeElementsCloseIn) {
  EXPECT_LT(difference(MasonryModel::cracked, QuadOrder::eight_node, 200.0), 0.005);
  EXPECT_LT(difference(MasonryModel::cracked, QuadOrder::eight_node, 100.0), 0.0025);
}

// By 25 mm (too slow to repeat here) the largest difference is 0.2%.
TEST(IndependentWall, CrackedReactionsOfFourNodeElementsCloseIn) {
  const double coarse = difference(MasonryModel::cracked, QuadOrder::four_node, 100.0);
  const double fine = difference(MasonryModel::cracked, QuadOrder::four_node, 50.0);
  EXPECT_LT(fine, 0.5 * coarse);
  EXPECT_LT(fine, 0.01);
}

// A gap of half a millimetre takes a third of its load off the needle.
TEST(IndependentWall, TheSlackOfANeedleMatters) {
  Job job = job_of(wall_named("slack needle"));
  for (Needle& needle : job.needles) needle.slack = 0.0;
  const double tight =
      reactions_of(job, MasonryModel::cracked, QuadOrder::eight_node, 100.0)[1].force;
  EXPECT_GT(tight, 1.5 * recorded("slack needle", MasonryModel::cracked)[1]);
}

}  // namespace
}  // namespace deadshore::solver
