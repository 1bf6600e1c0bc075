#pragma once

#include "solver/panel/panel_model.h"

#include <Eigen/Core>

#include <span>
#include <string_view>
#include <vector>

namespace deadshore::solver {

/// An uncracked wall condensed to the points of contact under it: how far each comes down under the
/// loads, and the flexibility matrix between them. It takes one factorisation and one solution for
/// every point; after that any stiffness, slack or preload of the beds is a small dense problem,
/// exact to round-off.
class CondensedWall {
 public:
  /// \param loading uncracked, on the ground alone (no beam); its beds give the points
  /// \throws SolveError where the wall does not stand without them
  CondensedWall(PanelModel& model, const PanelLoading& loading);

  /// Upward forces on the wall, N.
  struct Reactions {
    std::vector<double> beds;  ///< in the order of the beds given
    double base_left = 0.0;
    double base_right = 0.0;
  };

  /// Reactions on beds with the same points in the same order as those the wall was condensed to,
  /// but with any stiffness and rest.
  /// \throws SolveError if the set of closed contacts does not settle
  [[nodiscard]] Reactions on(std::span<const ContactBed> beds) const;

 private:
  /// What a base carries, as a linear function of the pushes at the points.
  struct Base {
    double without_beds = 0.0;  ///< N
    Eigen::VectorXd per_push;   ///< more of it for each N of push at a point
  };
  [[nodiscard]] static Base base_of(PanelModel& model, const PanelLoading& bare,
                                    mesh::ChainKind chain,
                                    std::span<const ContactPoint* const> points);
  [[nodiscard]] Eigen::VectorXd pushes_on(std::span<const ContactPoint* const> points) const;

  Eigen::VectorXd approach_;     ///< of each point under the loads, without any bed, mm
  Eigen::MatrixXd flexibility_;  ///< decrease of approach of point i by a push of 1 N at j, mm/N
  Base left_;
  Base right_;
};

}  // namespace deadshore::solver
