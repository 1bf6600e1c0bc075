#include "tests/io/made_up_result.h"

#include "solver/result/result_stages.h"

#include <cmath>
#include <limits>
#include <utility>
#include <vector>

namespace deadshore::io::test {
namespace {

constexpr int columns = 8;
constexpr int rows = 6;
constexpr double size = 500.0;

solver::Job made_up_job() {
  solver::Job job;
  job.title = "Invented wall";
  job.wall.length = columns * size;
  job.wall.top = {{0.0, rows * size}, {columns * size, rows * size}};
  job.wall.openings = {{"window", 1500.0, 2000.0, 500.0, 500.0, 0.0}};
  job.wall.lintels = {{"window lintel", 0, 500.0, 0.0}};
  job.wall.cut = {1000.0, 3000.0, 1500.0};
  job.thickness = 250.0;
  job.right_end = solver::WallEnd::held;
  job.masonry = {"soft brick", 20e-6, 1500.0, 0.2, 2.4, 0.05};
  job.lintels = {{job.wall.lintels.front(), "concrete", 24e-6, 30e3, 0.2, 250.0}};
  job.line_loads = {{"floor", 2500.0, false, {0.0, 4000.0}, 6.0, 4.0}};
  job.point_loads = {{"purlin", 3500.0, 2750.0, 200.0, 3000.0, 1500.0}};
  job.needles = {{"N1", 1500.0, 150.0, 20e3, 0.0, 0.0}, {"N2", 2500.0, 150.0, 20e3, 1.0, 0.0}};
  return job;
}

bool is_cut(int column, int row) {
  return column >= 2 && column < 6 && row < 3;
}

bool is_window(int column, int row) {
  return column == 3 && row == 4;
}

/// 0 masonry, 1 window lintel, 2 cut
int region_at(int column, int row) {
  if (is_cut(column, row)) return 2;
  return column == 3 && row == 5 ? 1 : 0;
}

mesh::WallMesh made_up_mesh(bool whole) {
  mesh::WallMesh wall;
  wall.size = size;
  wall.remarks = {"The line of the floor was moved by 3 mm."};
  wall.quads.regions = {{mesh::RegionKind::masonry}, {mesh::RegionKind::lintel, 0}};
  if (whole) wall.quads.regions.push_back({mesh::RegionKind::cut});
  for (int row = 0; row <= rows; ++row) {
    for (int column = 0; column <= columns; ++column) {
      wall.quads.nodes.push_back({column * size, row * size});
    }
  }
  const auto node = [](int column, int row) { return row * (columns + 1) + column; };
  for (int row = 0; row < rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      if (is_window(column, row) || (is_cut(column, row) && !whole)) continue;
      for (const int corner : {node(column, row), node(column + 1, row), node(column + 1, row + 1),
                               node(column, row + 1)}) {
        wall.quads.connectivity.push_back(corner);
      }
      wall.quads.region_of_quad.push_back(region_at(column, row));
    }
  }
  return wall;
}

solver::PanelFields made_up_fields(const mesh::QuadMesh& mesh) {
  solver::PanelFields fields;
  for (const mesh::Point& node : mesh.nodes) {
    fields.displacement.push_back(1e-4 * node.x);
    fields.displacement.push_back(-5e-4 * node.y);
    fields.node_stress.push_back({-1e-4 * node.x, -2e-4 * node.y, 0.05});
  }
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    fields.quad_stress.push_back({0.0, -0.01 * quad, 0.0});
    fields.quad_crack_strain.push_back({1e-4 * quad, 0.0, 0.0});
    fields.quad_loose.push_back(quad == 20 ? 1 : 0);
  }
  return fields;
}

/// The hand sums: needles 30 and 20, piers 26, of which 3.5 from under the lines, and 24; 100 kN in
/// all.
solver::SpreadResult made_up_hand() {
  solver::SpreadResult hand;
  const auto masonry = [](double area, double share, double load) {
    return solver::SpreadItem{solver::WallMasonry{}, "masonry", area, share, load};
  };
  const auto floor = [](double share, double load, bool over_opening = false) {
    return solver::SpreadItem{solver::LineLoadId{0}, "floor", 0.0, share, load, over_opening};
  };
  const solver::SpreadItem lintel{solver::LintelId{0}, "window lintel", 0.25e6, 1.0, 1.5e3};
  const solver::SpreadItem purlin{solver::PointLoadId{0}, "purlin", 0.0, 1.0, 4.5e3};
  hand.needles = {
      {support_of(solver::NeedleId{0}),
       {masonry(2.6e6, 0.325, 13e3), lintel, floor(0.3875, 15.5e3, true)},
       30e3,
       {}},
      {support_of(solver::NeedleId{1}), {masonry(2.0e6, 0.25, 10e3), floor(0.25, 10e3)}, 20e3, {}}};
  hand.left_pier = {solver::supports::left_pier,
                    {masonry(3.2e6, 0.4, 16e3),
                     floor(0.1625, 6.5e3),
                     {solver::WallMasonry{}, "masonry", 0.7e6, 0.0875, 3.5e3, false, true}},
                    26e3,
                    {}};
  hand.right_pier = {solver::supports::right_pier,
                     {masonry(2.3e6, 0.2875, 11.5e3), floor(0.2, 8e3), purlin},
                     24e3,
                     {}};
  hand.load_total = 100e3;
  return hand;
}

solver::PanelResult made_up_analysis(solver::MasonryModel model, const mesh::QuadMesh& mesh) {
  const bool cracked = model == solver::MasonryModel::cracked;
  solver::PanelResult analysis;
  analysis.model = model;
  analysis.needles = {{"N1", 1500.0, cracked ? 24.55e3 : 21.3e3, cracked ? 1.2275 : 1.065, 1.0},
                      {"N2", 2500.0, cracked ? 26.05e3 : 18.7e3, cracked ? 2.3025 : 1.935, 0.75}};
  analysis.base_left = cracked ? 23.4e3 : 28e3;
  analysis.base_right = cracked ? 26e3 : 32e3;
  analysis.thrust_right = 5.25e3;
  analysis.load_total = 100e3;
  analysis.equilibrium_error = 3e-11;
  analysis.residual = 4e-9;
  analysis.iterations = cracked ? 14 : 2;
  analysis.max_settlement = cracked ? 2.41 : 1.97;
  analysis.max_compression = 1.15;
  analysis.fields = made_up_fields(mesh);
  if (cracked) {
    analysis.residual_load = 420.0;
    analysis.loose = {{1250.0,
                       0.25e6,
                       {2000.0, 2500.0},
                       {1500.0, 2000.0},
                       "over the cut between N1 and N2; a needle at x = 2250 mm would hold it"}};
  }
  return analysis;
}

/// Two sections side by side on padstones; the section from memory, the rest invented.
solver::PermanentBeam made_up_beam() {
  const solver::SteelSection section{
      "UB 203x133x25", solver::SectionKind::i_section, 203.2, 133.2, 5.7, 7.8, 7.6};
  solver::PermanentBeam beam;
  beam.name = "twin beam";
  beam.member = solver::steel_member(section, solver::SteelGrade::s275);
  beam.count = 2;
  beam.bearing = 150.0;
  beam.padstone = {300.0, 215.0, 30e3, 0.2, 24e-6, 20.0};
  beam.packing = {25.0, 15e3, 12.0, 0.25};
  return beam;
}

/// What the supports of one made-up analysis carry, N.
struct MadeUpForces {
  double first_needle = 0.0;
  double second_needle = 0.0;
  double left = 0.0;
  double right = 0.0;
  double cut = 0.0;
  double joists = 0.0;

  [[nodiscard]] double sum() const {
    return first_needle + second_needle + left + right + cut + joists;
  }
};

solver::PanelResult made_up_staged_analysis(solver::MasonryModel model, const mesh::QuadMesh& mesh,
                                            const MadeUpForces& forces, double settlement) {
  solver::PanelResult analysis = made_up_analysis(model, mesh);
  analysis.needles[0].force = forces.first_needle;
  analysis.needles[1].force = forces.second_needle;
  analysis.base_left = forces.left;
  analysis.base_right = forces.right;
  analysis.base_cut = forces.cut;
  if (forces.joists > 0.0) analysis.joists = {{solver::ShoreId{0}, forces.joists, 0.5}};
  analysis.load_total = forces.sum();
  analysis.max_settlement = settlement;
  analysis.loose.clear();
  analysis.damage = solver::Damage{0, 0, 1e-4, 2e-5, 0.0, "0, negligible: hairline cracks"};
  if (forces.cut > 0.0) {
    analysis.fields.quad_loose.assign(mesh.quad_count(), 0);
    return analysis;
  }
  for (const int region : mesh.region_of_quad) {
    analysis.fields.quad_out.push_back(region == 2 ? 1 : 0);
  }
  return analysis;
}

void crack(solver::PanelResult& analysis, double width) {
  analysis.cracks = {
      {width, 700.0, {1500, 1600}, {1400, 1500}, {1800, 2000}, 51.0, "over needle N1"},
      {0.2, 300.0, {2500, 2000}, {2500, 1900}, {2500, 2200}, 90.0, "from the corner of window"}};
  analysis.damage =
      solver::Damage{2, 1, 8e-4, 4e-4, width, "2, slight: cracks that are filled and redecorated"};
}

solver::BeamResult made_up_beam_result(double from_wall, double strength) {
  solver::BeamResult beam;
  beam.reaction_left = 0.5 * (from_wall + 1e3);
  beam.reaction_right = 0.5 * (from_wall + 1e3);
  beam.from_wall = from_wall;
  beam.largest_moment = 500.0 * from_wall;
  beam.largest_shear = 0.5 * from_wall;
  beam.sag = from_wall / 1e4;
  beam.packing_pressure = from_wall / 1e5;
  beam.packing_strength = strength;
  beam.stations = {{900.0, 0.0, beam.reaction_left, 0.0, 0.0},
                   {2000.0, beam.largest_moment, 0.0, beam.sag, 12.5},
                   {3100.0, 0.0, -beam.reaction_right, 0.0, 0.0}};
  return beam;
}

solver::StageSafety made_up_safety(double factor, double loose) {
  solver::StageSafety safety;
  safety.factor = factor;
  safety.upper_factor = 1.02 * factor;
  safety.factor_with_tension = 2.0 * factor;
  safety.loose_weight = loose;
  safety.tension_needed = loose > 0.0 ? 0.012 : 0.0;
  safety.triangles = 2500;
  safety.iterations = 40;
  safety.verdict = "It stands without tension.";
  return safety;
}

struct MadeUpStage {
  solver::StageResult stage;
  MadeUpForces uncracked;
  MadeUpForces cracked;
  double settlement = 0.0;
};

std::vector<MadeUpStage> made_up_stages() {
  using solver::Act;
  using solver::Operation;
  using solver::WorkPart;
  constexpr solver::ShoreId shore{0};
  constexpr solver::NeedleId first{0};
  constexpr solver::NeedleId second{1};
  const auto done = [](const char* name, double day, std::vector<Operation> operations) {
    solver::StageResult stage;
    stage.name = name;
    stage.day = day;
    stage.operations = std::move(operations);
    return stage;
  };
  return {
      {done("as built", 0.0, {}), {0, 0, 40e3, 45e3, 30e3, 0}, {0, 0, 41e3, 45e3, 29e3, 0}, 0.55},
      {done("needles in", 1.0, {{Act::tighten, shore}, {Act::fit, first}, {Act::fit, second}}),
       {0, 0, 33e3, 37e3, 25e3, 0},
       {0, 0, 33.5e3, 37e3, 24.5e3, 0},
       0.5},
      {done("cut", 2.0, {{Act::remove, WorkPart::cut}}),
       {18e3, 15e3, 21e3, 25e3, 0, 1e3},
       {20e3, 22e3, 16e3, 20e3, 0, 2e3},
       2.41},
      {done("packed", 9.0,
            {{Act::place, WorkPart::padstones},
             {Act::place, WorkPart::beam},
             {Act::pack, WorkPart::beam}}),
       {18e3, 15e3, 21.5e3, 25.5e3, 0, 1e3},
       {20e3, 22e3, 16.5e3, 20.5e3, 0, 2e3},
       2.43},
      {done("finished", 37.0,
            {{Act::release, first}, {Act::release, second}, {Act::slacken, shore}}),
       {0, 0, 49e3, 52e3, 0, 0},
       {0, 0, 48.5e3, 52.5e3, 0, 0},
       3.1}};
}

void add_findings(solver::JobResult& result) {
  solver::StageResult& cut = result.stages[2];
  solver::PanelResult& cracked = cut.analyses.back();
  cracked.loose = made_up_analysis(solver::MasonryModel::cracked, result.mesh.quads).loose;
  crack(cracked, 1.4);
  crack(result.stages[3].analyses.back(), 1.1);
  for (solver::PanelResult& analysis : result.stages[3].analyses) {
    analysis.beam = made_up_beam_result(0.0, 2.5);
  }
  for (solver::PanelResult& analysis : result.stages[4].analyses) {
    analysis.beam = made_up_beam_result(25e3, 12.0);
  }
  for (solver::StageResult& stage : result.stages) stage.safety = made_up_safety(3.5, 0.0);
  cut.safety = made_up_safety(1.25, 1.5e3);
  cut.safety->mechanism.assign(2 * result.mesh.quads.nodes.size(), 0.5);
}

constexpr double nothing = std::numeric_limits<double>::quiet_NaN();

void make_fall(solver::PanelResult& analysis, const std::string& reason) {
  analysis.no_equilibrium = reason;
  for (solver::NeedleReaction& needle : analysis.needles) {
    needle.force = needle.settlement = needle.contact = nothing;
  }
  analysis.base_left = analysis.base_right = analysis.thrust_right = nothing;
  analysis.equilibrium_error = analysis.residual = analysis.residual_load = nothing;
  analysis.max_settlement = analysis.max_compression = nothing;
}

}  // namespace

void work_out_again(solver::JobResult& result) {
  if (!is_staged(result)) result.stages[0].operations = stage_at_once(result.job).operations;
  solver::StageState state = state_before(result.job);
  for (solver::StageResult& stage : result.stages) {
    state = state_after(result.job, state, {stage.name, stage.day, stage.operations});
    stage.state = state;
  }
  result.monitoring = monitoring_of(result.job, result.mesh, result.stages);
}

solver::JobResult made_up_result() {
  solver::JobResult result;
  result.job = made_up_job();
  result.mesh = made_up_mesh(false);
  result.hand = made_up_hand();
  result.stages = {{"cut",
                    {made_up_analysis(solver::MasonryModel::uncracked, result.mesh.quads),
                     made_up_analysis(solver::MasonryModel::cracked, result.mesh.quads)}}};
  result.mesh_effects = {
      {solver::MasonryModel::uncracked, 1000.0, "cut", {0.004, -0.003}, 0.001, 0.001},
      {solver::MasonryModel::cracked, 1000.0, "cut", {0.011, -0.009}, 0.002, 0.002}};
  result.comparison = {
      {"N1", 30e3, 21.3e3, 24.55e3, "It gives 1.2 mm and sheds load to the left pier."},
      {"N2", 20e3, 18.7e3, 26.05e3, "Cracking leans the wall on it."}};
  result.times = {{"analysis", 1.23}};
  work_out_again(result);
  return result;
}

solver::Sensitivity made_up_sensitivity() {
  solver::Sensitivity sensitivity;
  sensitivity.model = solver::MasonryModel::cracked;
  sensitivity.mesh_size = 400.0;
  sensitivity.by_differences = true;
  sensitivity.supports = {{support_of(solver::NeedleId{0}),
                           solver::StageId{0},
                           24.55e3,
                           {{solver::Unsure::masonry_stiffness, 22.0e3, 27.5e3, {}},
                            {solver::Unsure::packing, 24.1e3, 30.0e3, solver::NeedleId{1}}}}};
  sensitivity.falls = {"tensile strength x 0.5"};
  return sensitivity;
}

solver::JobResult made_up_result_that_falls(const std::string& reason) {
  solver::JobResult result = made_up_result();
  make_fall(result.stages.front().analyses.back(), reason);
  for (solver::NeedleComparison& needle : result.comparison) needle.cracked = nothing;
  result.mesh_effects.pop_back();
  return result;
}

solver::JobResult made_up_staged_result() {
  solver::JobResult result = made_up_result();
  result.job.analysis.sequence = solver::Sequence::staged;
  result.job.beam = made_up_beam();
  result.job.dead_shores = {{"floor shore",
                             solver::LineLoadId{0},
                             0.5,
                             {},
                             solver::DeadShore::JoistEnds{2.0, 500.0, 400.0}}};
  result.mesh = made_up_mesh(true);
  result.stages.clear();
  for (const MadeUpStage& made_up : made_up_stages()) {
    solver::StageResult& stage = result.stages.emplace_back(made_up.stage);
    stage.analyses = {made_up_staged_analysis(solver::MasonryModel::uncracked, result.mesh.quads,
                                              made_up.uncracked, 0.8 * made_up.settlement),
                      made_up_staged_analysis(solver::MasonryModel::cracked, result.mesh.quads,
                                              made_up.cracked, made_up.settlement)};
  }
  add_findings(result);
  result.comparison = {{"N1", 30e3, 18e3, 20e3, "It gives 1.2 mm."},
                       {"N2", 20e3, 15e3, 22e3, "Cracking leans the wall on it."}};
  work_out_again(result);
  return result;
}

solver::JobResult made_up_staged_result_that_falls(const std::string& reason) {
  solver::JobResult result = made_up_staged_result();
  result.stages.resize(3);
  result.stages.back().safety.reset();
  make_fall(result.stages.back().analyses.back(), reason);
  work_out_again(result);
  for (solver::NeedleComparison& needle : result.comparison) needle.cracked = nothing;
  result.mesh_effects.pop_back();
  return result;
}

}  // namespace deadshore::io::test
