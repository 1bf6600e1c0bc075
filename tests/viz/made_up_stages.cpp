#include "made_up_stages.h"

#include "made_up_job.h"
#include "solver/job/stage_state.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace deadshore::viz {
namespace {

using solver::Act;
using solver::JobResult;
using solver::PanelResult;
using solver::StageState;

solver::PermanentBeam made_up_beam() {
  solver::PermanentBeam beam;
  beam.name = "kitchen beam";
  beam.member.section = {
      "UB 203x133x25", solver::SectionKind::i_section, 203.2, 133.2, 5.7, 7.8, 7.6};
  beam.member.properties = solver::properties_of(beam.member.section);
  beam.member.f_y = 275.0;
  beam.count = 2;
  beam.bearing = 150.0;
  beam.padstone = {250.0, 150.0, 25000.0, 0.2, 24e-6, 20.0};
  beam.packing = {25.0, 15000.0, 20.0};
  return beam;
}

std::vector<solver::Stage> made_up_order() {
  using solver::WorkPart;
  constexpr solver::ShoreId shore{0};
  constexpr solver::NeedleId first{0};
  constexpr solver::NeedleId second{1};
  constexpr solver::NeedleId third{2};
  return {{"as built", 0.0, {}},
          {"floors propped", 0.0, {{Act::tighten, shore}}},
          {"needles in", 1.0, {{Act::fit, first}, {Act::fit, second}, {Act::fit, third}}},
          {"lintels out", 1.0, {{Act::remove, solver::LintelId{1}}}},
          {"cut", 2.0, {{Act::remove, WorkPart::cut}}},
          {"padstones",
           3.0,
           {{Act::remove, WorkPart::pockets},
            {Act::place, WorkPart::padstones},
            {Act::place, WorkPart::beam}}},
          {"packed", 4.0, {{Act::pack, WorkPart::beam}}},
          {"N1 out", 7.0, {{Act::release, first}}},
          {"N2 and N3 out", 8.0, {{Act::release, second}, {Act::release, third}}},
          {"finished", 32.0, {{Act::slacken, shore}}}};
}

mesh::WallMesh whole_wall(const solver::Job& job) {
  const mesh::Cut& cut = job.wall.cut;
  const solver::PermanentBeam& beam = *job.beam;
  const double top = cut.soffit - beam.packing.thickness - beam.member.section.h;
  const mesh::Interval pocket{top, cut.soffit};
  const mesh::Interval pad{top - beam.padstone.depth, top};
  const std::vector<mesh::WallBlock> blocks{
      {solver::pockets_group, "pockets", {cut.left - beam.bearing, cut.left}, pocket},
      {solver::pockets_group, "pockets", {cut.right, cut.right + beam.bearing}, pocket},
      {solver::padstones_group, "padstones", {cut.left - beam.padstone.length, cut.left}, pad},
      {solver::padstones_group, "padstones", {cut.right, cut.right + beam.padstone.length}, pad}};
  std::vector<mesh::Interval> bearings;
  for (const solver::Needle& needle : job.needles) bearings.push_back(needle.bearing());
  return mesh::mesh_whole_wall(job.wall, blocks, {}, bearings, {80.0, mesh::QuadOrder::four_node});
}

/// The beam as if it carried `load` N evenly between its bearings.
solver::BeamResult made_up_beam_result(const solver::Job& job, double load) {
  const mesh::Cut& cut = job.wall.cut;
  solver::BeamResult beam;
  beam.from_wall = load;
  beam.reaction_left = 0.55 * load + 1.1e3;
  beam.reaction_right = 0.45 * load + 1.1e3;
  beam.packing_pressure = 0.4;
  constexpr int steps = 40;
  const double from = cut.left - 150.0;
  const double span = cut.span().length() + 300.0;
  for (int i = 0; i <= steps; ++i) {
    const double part = static_cast<double>(i) / steps;
    solver::BeamStation station;
    station.x = from + part * span;
    station.packing = load / span * (1.0 + 0.6 * std::cos(2.0 * std::numbers::pi * part));
    station.moment = 0.5 * load * span * part * (1.0 - part) * 0.7;
    station.shear = load * (0.5 - part);
    station.deflection = 0.4 + 2.2e-5 * load * std::sin(std::numbers::pi * part);
    beam.largest_moment = std::max(beam.largest_moment, station.moment);
    beam.stations.push_back(station);
  }
  beam.largest_shear = 0.5 * load;
  return beam;
}

std::vector<solver::Crack> made_up_cracks(double width) {
  return {
      {width, 900.0, {2436.0, 2636.0}, {2300.0, 2250.0}, {2600.0, 3100.0}, 70.0, "over needle N1"},
      {0.6 * width,
       700.0,
       {3500.0, 2500.0},
       {3450.0, 2200.0},
       {3550.0, 2900.0},
       82.0,
       "between N2 and N3"},
      {0.3 * width,
       500.0,
       {2100.0, 4600.0},
       {2000.0, 4500.0},
       {2400.0, 4900.0},
       45.0,
       "from the corner of opening stair window"},
      {0.08,
       300.0,
       {4700.0, 3000.0},
       {4600.0, 2900.0},
       {4800.0, 3100.0},
       45.0,
       "over the right jamb"}};
}

/// The panel of the wall as cut, moved onto the mesh of the whole wall and told what is there.
PanelResult made_up_panel(const JobResult& result, const PanelResult& as_cut,
                          const StageState& works) {
  const solver::Job& job = result.job;
  const mesh::QuadMesh& mesh = result.mesh.quads;
  PanelResult panel = as_cut;
  panel.fields = {};
  const bool cracked = panel.model == solver::MasonryModel::cracked;
  double relief = 1.0;
  int needles = 0;
  if (works.packed_on) relief = 0.9;
  for (std::size_t i = 0; i < panel.needles.size(); ++i) {
    const bool in = solver::is_in(works.needles[i]);
    needles += in ? 1 : 0;
    panel.needles[i].force = in && works.cut_out
                                 ? as_cut.needles[i].force * relief * (1.0 + 0.1 * i)
                             : in ? 0.4e3
                                  : 0.0;
    panel.needles[i].contact = in ? 1.0 : 0.0;
  }
  panel.base_cut = works.cut_out ? 0.0 : 62e3;
  panel.max_settlement = works.cut_out ? 1.6 : 0.3;
  for (const mesh::Point& node : mesh.nodes) {
    const double pressure = 0.02 + 0.11 * (1.0 - node.y / job.wall.height());
    solver::PlaneTensor stress{0.03 * std::cos(node.x / 900.0), -pressure, 0.0};
    if (works.cut_out)
      for (const solver::NeedleReaction& needle : panel.needles)
        if (node.y >= job.wall.cut.soffit)
          stress.yy -= needle.force * 4e-3 /
                       (200.0 + std::hypot(node.x - needle.x, node.y - job.wall.cut.soffit)) / 10.0;
    panel.fields.node_stress.push_back(stress);
    panel.fields.displacement.insert(panel.fields.displacement.end(), {0.0, -0.2e-3 * node.y});
  }
  for (int quad = 0; quad < mesh.quad_count(); ++quad) {
    const auto nodes = mesh.nodes_of(quad);
    const mesh::Point& corner = mesh.nodes[nodes[0]];
    panel.fields.quad_stress.push_back(panel.fields.node_stress[nodes[0]]);
    panel.fields.quad_crack_strain.emplace_back();
    panel.fields.quad_out.push_back(works.is_out(mesh.region_of(quad)) ? 1 : 0);
    const bool loose = cracked && works.cut_out && !works.packed_on && corner.y >= 2200.0 &&
                       corner.y - 2200.0 < 400.0 - std::abs(corner.x - 3450.0);
    panel.fields.quad_loose.push_back(loose ? 1 : 0);
  }
  if (!works.cut_out || works.packed_on) panel.loose.clear();
  if (works.packed_on) panel.beam = made_up_beam_result(job, 14e3 * (4 - needles));
  if (works.beam && !works.packed_on) panel.beam = made_up_beam_result(job, 0.0);
  if (works.shore_tight.front() != 0)
    panel.joists = {{solver::ShoreId{0}, works.cut_out ? 6.4e3 : 0.0, 0.7}};
  if (cracked && works.cut_out) {
    panel.cracks = made_up_cracks(works.packed_on ? 1.9 : 1.2);
    panel.damage = {
        1, 2, 7e-4, 3e-4, panel.cracks.front().width, "slight: easily filled, redecoration needed"};
  }
  return panel;
}

solver::StageSafety made_up_safety(const JobResult& result, const StageState& works) {
  solver::StageSafety safety;
  safety.factor = works.cut_out && !works.packed_on ? 1.42 : 3.1;
  safety.upper_factor = safety.factor + 0.02;
  safety.factor_with_tension = safety.factor + 1.1;
  safety.loose_weight = 0.6e3;
  safety.verdict = "It stands; a needle more at 3450 mm would help most.";
  for (const mesh::Point& node : result.mesh.quads.nodes) {
    const bool turns = node.x > 2900.0 && node.y > 2200.0;
    safety.mechanism.push_back(turns ? (node.y - 2200.0) / 3000.0 : 0.0);
    safety.mechanism.push_back(turns ? -(node.x - 2900.0) / 3100.0 : 0.0);
  }
  return safety;
}

}  // namespace

JobResult made_up_staged_result() {
  JobResult result = made_up_result();
  solver::Job& job = result.job;
  job.analysis.sequence = solver::Sequence::staged;
  job.wall.openings.push_back({"yard door", 2500.0, 0.0, 1000.0, 1900.0, 0.0});
  job.wall.lintels.push_back({"door lintel", job.wall.openings.size() - 1, 150.0, 150.0});
  job.lintels.push_back({job.wall.lintels.back(), "concrete", 24e-6, 25000.0, 0.2, job.thickness});
  job.beam = made_up_beam();
  job.dead_shores = {{"kitchen shore", solver::LineLoadId{2}, 1.0, {}, {}}};
  job.stages = made_up_order();
  result.mesh = whole_wall(job);

  const std::vector<PanelResult> as_cut = std::move(result.stages.front().analyses);
  const std::vector<StageState> states = solver::states_of(job, job.stages);
  result.stages.clear();
  for (std::size_t i = 0; i < job.stages.size(); ++i) {
    solver::StageResult& stage = result.stages.emplace_back();
    stage.name = job.stages[i].name;
    stage.day = job.stages[i].day;
    stage.operations = job.stages[i].operations;
    stage.state = states[i];
    for (const PanelResult& panel : as_cut)
      stage.analyses.push_back(made_up_panel(result, panel, states[i]));
    stage.safety = made_up_safety(result, states[i]);
  }
  return result;
}

}  // namespace deadshore::viz
