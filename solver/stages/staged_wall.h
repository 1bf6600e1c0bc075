#pragma once

#include "mesh/mesh_part.h"
#include "mesh/wall_mesher.h"
#include "solver/job/job.h"
#include "solver/job/stage_state.h"
#include "solver/panel/newton.h"
#include "solver/panel/panel_model.h"
#include "solver/panel/panel_result.h"

#include <Eigen/Core>

#include <functional>
#include <initializer_list>
#include <map>
#include <memory>
#include <optional>
#include <vector>

namespace deadshore::solver {

/// A wall under one masonry model, taken through the stages of the work one after the other.
///
/// What is added comes in free of stress in the shape that the wall has then: a needle just touches
/// (or keeps its slack), packing fills what gap there is, padstones fit their pockets. What is
/// taken out leaves its load to the rest. Packing that hardens keeps the load it has: only what
/// comes after meets the stiffer bed.
class StagedWall {
 public:
  /// \param whole mesh of the whole wall; must outlive this
  StagedWall(const Job& job, const mesh::WallMesh& whole, MasonryModel model);

  /// How a stage moved the wall.
  struct Movement {
    Eigen::VectorXd wall;  ///< 2 per node of the whole mesh, mm
    Eigen::VectorXd beam;  ///< of the beam's nodes; empty before it is placed
    double largest = 0.0;  ///< displacement since the start of all work of what is there, mm
  };

  /// Called after each Newton step with the iteration and the relative residual.
  using Report = std::function<void(int, double)>;

  /// Does the next stage and finds the new state of rest. Fields come on the whole mesh.
  /// \param uncracked the uncracked wall's movement in this stage: a start for the solution of a
  ///   cracked one, which also judges by it what is loose
  /// \param expected another start; the solution begins with what is nearest to balance
  /// \throws SolveError if it does not converge or is not in equilibrium to 1e-8
  [[nodiscard]] PanelResult advance(const Stage& stage,
                                    const std::optional<Movement>& uncracked = {},
                                    const Report& report = {},
                                    const std::optional<Movement>& expected = {});

  /// In the last stage.
  [[nodiscard]] const Movement& movement() const { return movement_; }

  [[nodiscard]] const StageState& state() const { return state_; }

 private:
  /// What a bed's points remember: the approach at which each begins to push, and its stiffness.
  struct Memory {
    std::vector<double> rest;
    double stiffness = 0.0;
  };

  void rebuild_model();
  void carry_memory(const Stage& stage, std::vector<ContactBed>& beds);
  [[nodiscard]] Memory begin_memory(const ContactBed& bed) const;
  [[nodiscard]] PanelLoading make_loading(const Stage& stage);
  [[nodiscard]] PanelResult result_of(const PanelLoading& loading, const NewtonReport& report,
                                      double reference_movement);
  void begin_nearest(std::initializer_list<const Movement*> movements, const PanelLoading& loading);
  void keep_movement(const Eigen::VectorXd& before);
  [[nodiscard]] Eigen::VectorXd on_part(const Eigen::VectorXd& whole) const;

  const Job& job_;
  const mesh::WallMesh& whole_;
  MasonryModel masonry_;
  StageState state_;
  mesh::MeshPart part_;
  std::unique_ptr<PanelModel> model_;  ///< of `part_`
  Eigen::VectorXd u_;                  ///< of the model's nodes, mm
  Eigen::VectorXd whole_u_;  ///< of all nodes of the whole mesh; what is out rests as it was
  Movement movement_;
  Eigen::VectorXd padstone_datum_;  ///< `whole_u_` when they were placed; empty before
  std::map<BedId, Memory> memory_;
};

}  // namespace deadshore::solver
