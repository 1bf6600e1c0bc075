// What find_faults refuses, at which key, and what it lets pass. The rules are those of
// solver/loads/house_loads.h; no outside source.
#include "tests/solver/fault_cases.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>
#include <ostream>
#include <string>
#include <vector>

namespace deadshore::solver {
namespace {

// 6 m x 5 m, cut from 1.0 m to 4.4 m up to 2.4 m; a window with a lintel over the cut, a
// round-headed door in the right pier.
Job sound_job() {
  Job job;
  job.title = "an invented wall";
  job.wall.length = 6000.0;
  job.wall.top = {{0.0, 5000.0}, {6000.0, 5000.0}};
  job.wall.openings = {{"window", 1500.0, 3000.0, 900.0, 1000.0, 0.0},
                       {"door", 5000.0, 0.0, 600.0, 2000.0, 100.0}};
  job.wall.lintels = {{"beam", 0, 150.0, 150.0}};
  job.wall.cut = {1000.0, 4400.0, 2400.0};
  job.thickness = 215.0;
  job.masonry = {"soft brick", 19e-6, 1500.0, 0.2, 2.4, 0.05};
  job.lintels = {{job.wall.lintels[0], "concrete", 25e-6, 25000.0, 0.2, 215.0}};
  job.line_loads = {{"floor", 4500.0, false, {0.0, 6000.0}, 3.0, 2.0},
                    {"roof", 5000.0, true, {0.0, 6000.0}, 2.0, 1.0}};
  job.point_loads = {{"purlin", 3500.0, 4000.0, 200.0, 6500.0, 4000.0}};
  job.needles = {{"N1", 1600.0, 150.0, 20e3, 0.0, 5e3}, {"N2", 2800.0, 150.0, 20e3, 3.0, 0.0}};
  return job;
}

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

class Faults : public testing::TestWithParam<BadJob> {};

TEST_P(Faults, AreFoundAtTheirKeyFirst) {
  expect_fault(sound_job(), GetParam());
}

void set_top(Job& job, std::vector<mesh::Point> top) {
  job.wall.top = std::move(top);
}

const BadJob bad_numbers[] = {
    {"wall.length", "0 mm", [](Job& j) { j.wall.length = 0.0; }},
    {"wall.height", "-5 m",
     [](Job& j) {
       set_top(j, {{0.0, -5000.0}, {6000.0, -5000.0}});
     }},
    {"wall.outline[1]", "inf", [](Job& j) { j.wall.top[1].y = infinity; }},
    {"wall.thickness", "0 mm", [](Job& j) { j.thickness = 0.0; }},
    {"masonry.unit_weight", "-19 kN/m3", [](Job& j) { j.masonry.unit_weight = -19e-6; }},
    {"masonry.E", "nan", [](Job& j) { j.masonry.E = nan; }},
    {"masonry.nu", "0.5", [](Job& j) { j.masonry.nu = 0.5; }},
    {"masonry.nu", "-0.1", [](Job& j) { j.masonry.nu = -0.1; }},
    {"masonry.compressive_strength", "0 N/mm2",
     [](Job& j) { j.masonry.compressive_strength = 0.0; }},
    {"masonry.tensile_strength", "-0.05 N/mm2", [](Job& j) { j.masonry.tensile_strength = -0.05; }},
    {"masonry.unit_weight", "no load",
     [](Job& j) {
       j.masonry.unit_weight = 0.0;
       j.line_loads.clear();
       j.point_loads.clear();
     }},
    {"opening[0].left", "nan", [](Job& j) { j.wall.openings[0].left = nan; }},
    {"opening[0].width", "0 mm", [](Job& j) { j.wall.openings[0].width = 0.0; }},
    {"opening[0].height", "-100 mm", [](Job& j) { j.wall.openings[0].height = -100.0; }},
    {"opening[1].rise", "-100 mm", [](Job& j) { j.wall.openings[1].rise = -100.0; }},
    {"lintel[0].depth", "0 mm", [](Job& j) { j.lintels[0].shape.depth = 0.0; }},
    {"lintel[0].bearing", "0 mm", [](Job& j) { j.lintels[0].shape.bearing = 0.0; }},
    {"lintel[0].E", "0 N/mm2", [](Job& j) { j.lintels[0].E = 0.0; }},
    {"lintel[0].nu", "0.6", [](Job& j) { j.lintels[0].nu = 0.6; }},
    {"lintel[0].unit_weight", "-1 kN/m3", [](Job& j) { j.lintels[0].unit_weight = -1e-6; }},
    {"lintel[0].thickness", "0 mm", [](Job& j) { j.lintels[0].thickness = 0.0; }},
    {"cut.left", "nan", [](Job& j) { j.wall.cut.left = nan; }},
    {"cut.soffit", "0 mm", [](Job& j) { j.wall.cut.soffit = 0.0; }},
    {"line_load[0].dead", "-3 kN/m", [](Job& j) { j.line_loads[0].dead = -3.0; }},
    {"line_load[0].imposed", "inf", [](Job& j) { j.line_loads[0].imposed = infinity; }},
    {"line_load[1].level", "nan", [](Job& j) { j.line_loads[1].level = nan; }},
    {"point_load[0].dead", "-6.5 kN", [](Job& j) { j.point_loads[0].dead = -6500.0; }},
    {"point_load[0].imposed", "-4 kN", [](Job& j) { j.point_loads[0].imposed = -4000.0; }},
    {"point_load[0].bearing", "0 mm", [](Job& j) { j.point_loads[0].bearing = 0.0; }},
    {"needle[0].x", "inf", [](Job& j) { j.needles[0].x = infinity; }},
    {"needle[1].bearing_width", "0 mm", [](Job& j) { j.needles[1].bearing_width = 0.0; }},
    {"needle[1].stiffness", "0 kN/mm", [](Job& j) { j.needles[1].stiffness = 0.0; }},
    {"needle[1].slack", "-1 mm", [](Job& j) { j.needles[1].slack = -1.0; }},
    {"needle[0].preload", "-5 kN", [](Job& j) { j.needles[0].preload = -5000.0; }},
    {"analysis.mesh", "0 mm", [](Job& j) { j.analysis.mesh_size = 0.0; }},
};
INSTANTIATE_TEST_SUITE_P(InNumbers, Faults, testing::ValuesIn(bad_numbers));

const BadJob bad_names[] = {
    {"opening[1].name", "\"window\"", [](Job& j) { j.wall.openings[1].name = "window"; }},
    {"lintel[0].name", "\"cut\"", [](Job& j) { j.lintels[0].shape.name = "cut"; }},
    {"lintel[0].name", "\"pockets\"", [](Job& j) { j.lintels[0].shape.name = "pockets"; }},
    {"line_load[1].name", "line_load[0].name", [](Job& j) { j.line_loads[1].name = "floor"; }},
    {"point_load[0].name", "line_load[1].name", [](Job& j) { j.point_loads[0].name = "roof"; }},
    {"needle[1].name", "\"N1\"", [](Job& j) { j.needles[1].name = "N1"; }},
    {"needle[0].name", "no name", [](Job& j) { j.needles[0].name.clear(); }},
    {"needle[0].name", "no name", [](Job& j) { j.needles[0].name = " \t"; }},
    {"needle[1].name", "\" N1\", also", [](Job& j) { j.needles[1].name = " N1"; }},
};
INSTANTIATE_TEST_SUITE_P(InNames, Faults, testing::ValuesIn(bad_names));

const BadJob bad_outlines[] = {
    {"wall.outline", "1 point",
     [](Job& j) {
       set_top(j, {{0.0, 5000.0}});
     }},
    {"wall.outline[0]", "500 mm along",
     [](Job& j) {
       set_top(j, {{500.0, 5000.0}, {3000.0, 6000.0}, {6000.0, 5000.0}});
     }},
    {"wall.outline[2]", "5.5 m along",
     [](Job& j) {
       set_top(j, {{0.0, 5000.0}, {3000.0, 6000.0}, {5500.0, 5000.0}});
     }},
    {"wall.outline[2]", "back",
     [](Job& j) {
       set_top(j, {{0.0, 5000.0}, {4000.0, 5000.0}, {3000.0, 6000.0}, {6000.0, 5000.0}});
     }},
    {"wall.outline[2]", "same as the point before",
     [](Job& j) {
       set_top(j, {{0.0, 5000.0}, {3000.0, 6000.0}, {3000.0, 6000.0}, {6000.0, 5000.0}});
     }},
    {"wall.outline[3]", "no width",
     [](Job& j) {
       set_top(
           j,
           {{0.0, 5000.0}, {3000.0, 5000.0}, {3000.0, 7000.0}, {3000.0, 6000.0}, {6000.0, 6000.0}});
     }},
    {"wall.outline[1]", "no width",
     [](Job& j) {
       set_top(j, {{0.0, 4800.0}, {0.0, 5000.0}, {6000.0, 5000.0}});
     }},
    {"wall.outline[2]", "not above the cut's soffit",
     [](Job& j) {
       set_top(j, {{0.0, 5000.0}, {3000.0, 6000.0}, {6000.0, 2400.0}});
     }},
    {"cut.soffit", "wall's top is at 5 m", [](Job& j) { j.wall.cut.soffit = 5000.0; }},
};
INSTANTIATE_TEST_SUITE_P(InTheOutline, Faults, testing::ValuesIn(bad_outlines));

const BadJob bad_openings[] = {
    {"opening[0].left", "-100 mm, past the wall's left end",
     [](Job& j) { j.wall.openings[0].left = -100.0; }},
    {"opening[0].left", "at the wall's left end", [](Job& j) { j.wall.openings[0].left = 0.0; }},
    {"opening[0].left", "6.2 m, past the wall's right end at 6 m",
     [](Job& j) { j.wall.openings[0].left = 6200.0; }},
    {"opening[1].width", "ends at 6.2 m", [](Job& j) { j.wall.openings[1].width = 1200.0; }},
    {"opening[1].width", "ends at 6 m", [](Job& j) { j.wall.openings[1].width = 1000.0; }},
    {"opening[1].sill", "-200 mm", [](Job& j) { j.wall.openings[1].sill = -200.0; }},
    {"opening[0].height", "up to 5.2 m, through",
     [](Job& j) { j.wall.openings[0].height = 2200.0; }},
    {"opening[1].height", "leaves no masonry", [](Job& j) { j.wall.openings[1].height = 5000.0; }},
    {"opening[0].height", "leaves no masonry over part",
     [](Job& j) {
       set_top(j, {{0.0, 5000.0}, {1500.0, 5000.0}, {6000.0, 8000.0}});
       j.wall.openings[0].height = 2000.0;
     }},
    {"opening[1].rise", "350 mm", [](Job& j) { j.wall.openings[1].rise = 350.0; }},
    {"opening[1].rise", "100 mm", [](Job& j) { j.wall.openings[1].height = 100.0; }},
    {"opening[2].left", "meets \"window\"",
     [](Job& j) {
       j.wall.openings.push_back({"hatch", 2000.0, 3200.0, 800.0, 400.0, 0.0});
     }},
    {"opening[2].left", "meets \"window\"",
     [](Job& j) {
       j.wall.openings.push_back({"hatch", 2400.0, 3200.0, 800.0, 400.0, 0.0});
     }},
    {"opening[2].sill", "not above the head of \"window\"",
     [](Job& j) {
       j.wall.openings.push_back({"hatch", 1500.0, 4000.0, 800.0, 300.0, 0.0});
     }},
    {"lintel[0].opening", "opening 3", [](Job& j) { j.lintels[0].shape.opening = 2; }},
    {"lintel[0].opening", "an arch", [](Job& j) { j.wall.openings[0].rise = 100.0; }},
    {"lintel[0].bearing", "runs from -100 mm", [](Job& j) { j.lintels[0].shape.bearing = 1600.0; }},
    {"lintel[0].bearing", "runs into opening \"hatch\"",
     [](Job& j) {
       j.wall.openings.push_back({"hatch", 2500.0, 4000.0, 500.0, 400.0, 0.0});
     }},
    {"lintel[0].depth", "through the wall's top at 5 m",
     [](Job& j) { j.lintels[0].shape.depth = 1100.0; }},
    {"lintel[0].bearing", "into the cut",
     [](Job& j) {
       j.wall.openings[0] = {"window", 400.0, 1000.0, 300.0, 600.0, 0.0};
       j.lintels[0].shape.bearing = 350.0;
     }},
    {"lintel", "1 lintels, and 0", [](Job& j) { j.wall.lintels.clear(); }},
};
INSTANTIATE_TEST_SUITE_P(InOpenings, Faults, testing::ValuesIn(bad_openings));

const BadJob bad_cuts[] = {
    {"cut.left", "-1 m, past", [](Job& j) { j.wall.cut.left = -1000.0; }},
    {"cut.right", "6.1 m, past the wall's right end at 6 m",
     [](Job& j) {
       j.wall.openings.pop_back();
       j.wall.cut.right = 6100.0;
     }},
    {"cut.right", "not right of", [](Job& j) { j.wall.cut.right = 1000.0; }},
    {"cut.left", "both ends free",
     [](Job& j) {
       j.wall.cut = {0.0, 6000.0, 2400.0};
     }},
    {"cut.soffit", "opening \"window\" is from 3 m to 4 m up",
     [](Job& j) { j.wall.cut.soffit = 3500.0; }},
    {"cut.soffit", "opening \"window\"", [](Job& j) { j.wall.cut.soffit = 3000.0; }},
    {"cut.right", "opening \"door\" is from 5 m to 5.6 m",
     [](Job& j) { j.wall.cut.right = 5300.0; }},
    {"cut.right", "opening \"door\"", [](Job& j) { j.wall.cut.right = 5000.0; }},
    {"cut.left", "opening \"hatch\"",
     [](Job& j) {
       j.wall.openings.push_back({"hatch", 700.0, 500.0, 600.0, 400.0, 0.0});
     }},
};
INSTANTIATE_TEST_SUITE_P(InTheCut, Faults, testing::ValuesIn(bad_cuts));

const BadJob bad_loads[] = {
    {"line_load[0].from", "-500 mm", [](Job& j) { j.line_loads[0].x.from = -500.0; }},
    {"line_load[0].to", "6.5 m, past", [](Job& j) { j.line_loads[0].x.to = 6500.0; }},
    {"line_load[0].to", "not right of",
     [](Job& j) {
       j.line_loads[0].x = {2000.0, 2000.0};
     }},
    {"line_load[0].level", "5.5 m, above the wall's top, which is at 5 m",
     [](Job& j) { j.line_loads[0].level = 5500.0; }},
    {"line_load[0].level", "at 4 m where x is 0 mm",
     [](Job& j) {
       set_top(j, {{0.0, 4000.0}, {3000.0, 7000.0}, {6000.0, 4500.0}});
     }},
    {"line_load[0].level", "-1 m, below the base", [](Job& j) { j.line_loads[0].level = -1000.0; }},
    {"line_load[0].level", "in opening \"window\"", [](Job& j) { j.line_loads[0].level = 3500.0; }},
    {"line_load[0].level", "in the cut", [](Job& j) { j.line_loads[0].level = 2300.0; }},
    {"line_load[1].level", "over the open top of opening \"window\"",
     [](Job& j) {
       j.wall.openings[0].sill = 4600.0;
       j.wall.openings[0].height = 400.0;
       j.lintels.clear();
       j.wall.lintels.clear();
     }},
    {"point_load[0].x", "bears from 5.9 m to 6.1 m", [](Job& j) { j.point_loads[0].x = 6000.0; }},
    {"point_load[0].level", "in opening \"window\"",
     [](Job& j) {
       j.point_loads[0].x = 2400.0;
       j.point_loads[0].level = 3900.0;
     }},
    {"point_load[0].level", "in opening \"door\"",  // between springing and crown
     [](Job& j) {
       j.point_loads[0].x = 5300.0;
       j.point_loads[0].level = 1950.0;
     }},
    {"point_load[0].level", "in the cut", [](Job& j) { j.point_loads[0].level = 1000.0; }},
};
INSTANTIATE_TEST_SUITE_P(InLoads, Faults, testing::ValuesIn(bad_loads));

const BadJob bad_needles[] = {
    {"needle[0].x", "bears from 975 mm to 1.125 m", [](Job& j) { j.needles[0].x = 1050.0; }},
    {"needle[1].x", "where the cut is from 1 m to 4.4 m", [](Job& j) { j.needles[1].x = 5000.0; }},
    {"needle[1].x", "where needle \"N1\" bears", [](Job& j) { j.needles[1].x = 1700.0; }},
    {"needle[0].preload", "5 kN with a slack of 2 mm", [](Job& j) { j.needles[0].slack = 2.0; }},
};
INSTANTIATE_TEST_SUITE_P(InNeedles, Faults, testing::ValuesIn(bad_needles));

const BadJob bad_analyses[] = {
    {"analysis.mesh", "1 mm, which makes some 30 million elements",
     [](Job& j) { j.analysis.mesh_size = 1.0; }},
    {"analysis.masonry", "nothing", [](Job& j) { j.analysis.masonry.clear(); }},
    {"analysis.masonry", "cracked twice",
     [](Job& j) {
       j.analysis.masonry = {MasonryModel::cracked, MasonryModel::cracked};
     }},
};
INSTANTIATE_TEST_SUITE_P(InTheAnalysis, Faults, testing::ValuesIn(bad_analyses));

TEST(FindFaults, NamesTheElementSizeThatFits) {
  // 30 m2 over 4 million elements: sqrt(7.5) = 2.74 mm, in whole mm.
  Job job = sound_job();
  job.analysis.mesh_size = 1.0;
  EXPECT_EQ(find_faults(job).at(0).due, "3 mm or more");
}

TEST(FindFaults, ReportsEveryFaultOfASoundOutline) {
  Job job = sound_job();
  job.needles[0].x = 500.0;
  job.wall.openings[0].left = -100.0;
  job.lintels.clear();
  job.wall.lintels.clear();
  job.line_loads[0].level = 9000.0;
  std::vector<std::string> keys;
  for (const Fault& fault : find_faults(job)) keys.push_back(fault.key);
  EXPECT_THAT(keys, testing::ElementsAre("opening[0].left", "line_load[0].level", "needle[0].x"));
}

class NoFaults : public testing::TestWithParam<GoodJob> {};

TEST_P(NoFaults, AreFoundInASoundJob) {
  Job job = sound_job();
  GetParam().change(job);
  expect_no_fault(job);
}

void clear_lintels(Job& job) {
  job.lintels.clear();
  job.wall.lintels.clear();
}

const GoodJob good_jobs[] = {
    {"as it is", [](Job&) {}},
    {"no needles", [](Job& j) { j.needles.clear(); }},
    {"no strength in tension", [](Job& j) { j.masonry.tensile_strength = 0.0; }},
    {"loads on a wall without weight", [](Job& j) { j.masonry.unit_weight = 0.0; }},
    {"a bay's slot up to the top",
     [](Job& j) {
       clear_lintels(j);
       j.wall.openings[0].height = 2000.0;
       j.line_loads.clear();
     }},
    {"a slot whose head misses the top by rounding",
     [](Job& j) {
       clear_lintels(j);
       set_top(j, {{0.0, 6100.0}, {6000.0, 6100.0}});
       j.wall.openings[0].sill = 3700.0;
       j.wall.openings[0].height = 2400.0 + 1e-9;
       j.line_loads.clear();
     }},
    {"a door wholly inside the cut",
     [](Job& j) {
       j.wall.openings.push_back({"old door", 3000.0, 0.0, 900.0, 2100.0, 0.0});
     }},
    {"an opening that the cut follows exactly",
     [](Job& j) {
       j.wall.openings.push_back({"old door", 1000.0, 0.0, 3400.0, 2400.0, 0.0});
     }},
    {"a window over the cut's jamb",
     [](Job& j) {
       j.wall.openings.push_back({"upper", 4000.0, 3000.0, 800.0, 800.0, 0.0});
     }},
    {"a cut to an end that has the other pier", [](Job& j) { j.wall.cut.left = 0.0; }},
    {"the whole wall cut with an end held",
     [](Job& j) {
       j.wall.cut = {0.0, 6000.0, 2400.0};
       j.left_end = WallEnd::held;
     }},
    {"a load on a sill and one on a head",
     [](Job& j) {
       j.line_loads[0].level = 3000.0;
       j.line_loads[0].x = {1500.0, 2400.0};
       j.point_loads[0].x = 2000.0;
       j.point_loads[0].level = 4000.0;
     }},
    {"a load on the higher side of a step, up to the step",
     [](Job& j) {
       set_top(j, {{0.0, 5000.0}, {3000.0, 5000.0}, {3000.0, 6000.0}, {6000.0, 6000.0}});
       j.line_loads[0].level = 6000.0;
       j.line_loads[0].x = {3000.0, 6000.0};
     }},
    {"needles side by side", [](Job& j) { j.needles[1].x = 1750.0; }},
    {"a needle against the jamb", [](Job& j) { j.needles[0].x = 1075.0; }},
    {"a lintel up to the wall's top", [](Job& j) { j.lintels[0].shape.depth = 1000.0; }},
};
INSTANTIATE_TEST_SUITE_P(AtTheLimits, NoFaults, testing::ValuesIn(good_jobs));

}  // namespace
}  // namespace deadshore::solver
