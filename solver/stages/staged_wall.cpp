#include "solver/stages/staged_wall.h"

#include "solver/panel/complete_result.h"
#include "solver/panel/wall_panel.h"
#include "solver/stages/beam_result.h"
#include "solver/stages/stage_beds.h"

#include <algorithm>

namespace deadshore::solver {

namespace {

bool same_parts(const StageState& a, const StageState& b) {
  return same_masonry(a, b) && a.beam == b.beam;
}

/// Fields of a part brought to the places that they have in the whole mesh.
PanelFields on_whole(const PanelFields& part_fields, const mesh::MeshPart& part,
                     const mesh::QuadMesh& whole, const Eigen::VectorXd& whole_u) {
  PanelFields fields;
  const std::size_t quads = static_cast<std::size_t>(whole.quad_count());
  fields.displacement.assign(whole_u.begin(), whole_u.end());
  fields.node_stress.resize(whole.nodes.size());
  fields.quad_stress.resize(quads);
  fields.quad_crack_strain.resize(quads);
  fields.quad_loose.assign(quads, 0);
  fields.quad_out.assign(quads, 1);
  for (std::size_t node = 0; node < part.node_of.size(); ++node) {
    fields.node_stress[static_cast<std::size_t>(part.node_of[node])] =
        part_fields.node_stress[node];
  }
  for (std::size_t quad = 0; quad < part.quad_of.size(); ++quad) {
    const std::size_t place = static_cast<std::size_t>(part.quad_of[quad]);
    fields.quad_stress[place] = part_fields.quad_stress[quad];
    fields.quad_crack_strain[place] = part_fields.quad_crack_strain[quad];
    fields.quad_loose[place] = part_fields.quad_loose[quad];
    fields.quad_out[place] = 0;
  }
  return fields;
}

/// The gap that a bed keeps when it is put in: a needle's slack, joists that have shrunk.
double first_gap(const Job& job, BedId bed) {
  if (bed.kind == BedKind::needle) return job.needles[bed.index].slack;
  if (bed.kind == BedKind::joists) return job.dead_shores[bed.index].joist_ends->gap;
  return 0.0;
}

}  // namespace

StagedWall::StagedWall(const Job& job, const mesh::WallMesh& whole, MasonryModel model)
    : job_(job),
      whole_(whole),
      masonry_(model),
      state_(state_before(job)),
      whole_u_(Eigen::VectorXd::Zero(2 * whole.quads.node_count())) {}

/// Begins the solution with that of the movements (or none) which is nearest to balance.
void StagedWall::begin_nearest(std::initializer_list<const Movement*> movements,
                               const PanelLoading& loading) {
  const Eigen::VectorXd rest = u_;
  double least = -1.0;
  for (const Movement* movement : movements) {
    if (movement == nullptr) continue;
    if (least < 0.0) least = out_of_balance(*model_, loading, rest);
    Eigen::VectorXd moved = rest;
    for (std::size_t node = 0; node < part_.node_of.size(); ++node) {
      moved.segment<2>(2 * static_cast<Eigen::Index>(node)) +=
          movement->wall.segment<2>(2 * part_.node_of[node]);
    }
    moved.tail(movement->beam.size()) += movement->beam;
    const double residual = out_of_balance(*model_, loading, moved);
    if (residual >= least) continue;
    least = residual;
    u_ = moved;
  }
}

/// Takes the solution over to the whole wall and notes how far it moved from `before`.
void StagedWall::keep_movement(const Eigen::VectorXd& before) {
  movement_.wall = Eigen::VectorXd::Zero(whole_u_.size());
  movement_.largest = 0.0;
  for (std::size_t node = 0; node < part_.node_of.size(); ++node) {
    const Eigen::Vector2d now = u_.segment<2>(2 * static_cast<Eigen::Index>(node));
    const Eigen::Index place = 2 * part_.node_of[node];
    movement_.wall.segment<2>(place) = now - whole_u_.segment<2>(place);
    movement_.largest = std::max(movement_.largest, now.norm());
    whole_u_.segment<2>(place) = now;
  }
  const Eigen::Index beam = u_.size() - 2 * part_.quads.node_count();
  movement_.beam = u_.tail(beam) - before.tail(beam);
}

Eigen::VectorXd StagedWall::on_part(const Eigen::VectorXd& whole) const {
  Eigen::VectorXd part = model_->start();
  for (std::size_t node = 0; node < part_.node_of.size(); ++node) {
    part.segment<2>(2 * static_cast<Eigen::Index>(node)) =
        whole.segment<2>(2 * part_.node_of[node]);
  }
  return part;
}

void StagedWall::rebuild_model() {
  part_ = part_at(whole_.quads, state_);
  std::optional<BeamLine> beam;
  std::vector<ContactBed> couplings;
  if (state_.beam) {
    beam = beam_line_of(job_, part_.quads.node_count());
    couplings = beam_beds(job_, part_.quads, *beam);
  }
  const Eigen::VectorXd beam_before =
      model_ && model_->beam() ? Eigen::VectorXd(u_.tail(2 * model_->beam()->node_count()))
                               : Eigen::VectorXd();
  model_ =
      std::make_unique<PanelModel>(part_.quads, supports_of(job_, part_.quads), beam, couplings);
  u_ = on_part(whole_u_);
  if (beam && beam_before.size() > 0) u_.tail(beam_before.size()) = beam_before;
}

StagedWall::Memory StagedWall::begin_memory(const ContactBed& bed) const {
  Memory memory;
  const double gap = first_gap(job_, bed.id);
  for (const ContactPoint& point : bed.points) memory.rest.push_back(point.approach(u_) + gap);
  memory.stiffness = bed.points.empty() ? 0.0 : bed.points.front().stiffness;
  return memory;
}

void StagedWall::carry_memory(const Stage& stage, std::vector<ContactBed>& beds) {
  std::erase_if(memory_, [&](const auto& entry) { return find_bed(beds, entry.first) == nullptr; });
  for (ContactBed& bed : beds) {
    const auto known = memory_.find(bed.id);
    Memory& memory = known != memory_.end()
                         ? known->second
                         : memory_.emplace(bed.id, begin_memory(bed)).first->second;
    for (std::size_t i = 0; i < bed.points.size(); ++i) {
      ContactPoint& point = bed.points[i];
      const double closure = point.approach(u_) - memory.rest[i];
      if (closure > 0.0) {  // hardening must not change the load that is on it
        memory.rest[i] = point.approach(u_) - closure * memory.stiffness / point.stiffness;
      }
    }
    if (!bed.points.empty()) memory.stiffness = bed.points.front().stiffness;
  }
  for (const Operation& operation : stage.operations) {
    if (operation.act != Act::preload) continue;
    const NeedleId id = std::get<NeedleId>(operation.target);
    const Needle& needle = job_.needles[index_of(id)];
    for (double& rest : memory_.at(bed_of(id)).rest) rest -= needle.preload / needle.stiffness;
  }
  for (ContactBed& bed : beds) {
    const Memory& memory = memory_.at(bed.id);
    for (std::size_t i = 0; i < bed.points.size(); ++i) bed.points[i].rest = memory.rest[i];
  }
}

PanelLoading StagedWall::make_loading(const Stage& stage) {
  PanelLoading loading;
  loading.materials = materials_at(job_, part_.quads, state_, masonry_);
  loading.beds = beds_at(job_, part_.quads, state_, model_->beam());
  carry_memory(stage, loading.beds);
  loading.load = model_->weight(loading.materials);
  const Eigen::VectorXd applied = loads_at(job_, part_.quads, state_);
  loading.load.head(applied.size()) += applied;
  if (padstone_datum_.size() > 0) {
    loading.datum.resize(part_.quads.regions.size());
    const auto pads = std::ranges::find(part_.quads.regions, padstones_region);
    loading.datum[static_cast<std::size_t>(pads - part_.quads.regions.begin())] =
        on_part(padstone_datum_);
  }
  return loading;
}

PanelResult StagedWall::result_of(const PanelLoading& loading, const NewtonReport& report,
                                  double reference_movement) {
  PanelResult result;
  result.model = masonry_;
  result.iterations = report.iterations;
  result.residual = report.residual;
  complete_result(job_, *model_, loading, u_, reference_movement, result);
  result.fields = on_whole(result.fields, part_, whole_.quads, whole_u_);
  for (std::size_t i = 0; i < job_.dead_shores.size(); ++i) {
    const ContactBed* bed = find_bed(loading.beds, bed_of(ShoreId{i}));
    if (bed == nullptr) continue;
    const ContactState joists = state_of(*bed, u_);
    result.joists.push_back({ShoreId{i}, joists.force, joists.contact});
  }
  if (model_->beam()) {
    result.beam = beam_result_of(job_, *model_->beam(), loading.beds, u_, state_.packing_age());
  }
  return result;
}

PanelResult StagedWall::advance(const Stage& stage, const std::optional<Movement>& uncracked,
                                const Report& report, const std::optional<Movement>& expected) {
  const StageState before = state_;
  state_ = state_after(job_, state_, stage);
  if (!model_ || !same_parts(before, state_)) rebuild_model();
  if (state_.padstones && !before.padstones) padstone_datum_ = whole_u_;
  const PanelLoading loading = make_loading(stage);
  const Eigen::VectorXd start = u_;
  begin_nearest({uncracked ? &*uncracked : nullptr, expected ? &*expected : nullptr}, loading);
  const NewtonReport newton = minimise(*model_, loading, u_, {}, report);
  require_converged(newton, masonry_);
  keep_movement(start);
  return result_of(loading, newton, uncracked ? uncracked->largest : 0.0);
}

}  // namespace deadshore::solver
