#pragma once

#include "solver/panel/interior_point.h"
#include "solver/panel/panel_model.h"

#include <Eigen/Core>

#include <optional>
#include <vector>

namespace deadshore::solver {

/// A primal-dual interior-point descent to the displacement of least energy.
///
/// The number of steps hardly depends on the mesh or the tensile strength. Each costs one
/// factorisation and a few solves: a predictor and a corrector (Mehrotra, SIAM J. Optim. 2 (1992)
/// 575-601), then centring corrections for as long as they lengthen the step (Gondzio, Comput.
/// Optim. Appl. 6 (1996) 137-156). The end of the path is only neared: finish with the law itself.
class InteriorPath {
 public:
  /// Starts at `u` on the path, at a mean product of crack and allowance (or gap and push) of
  /// `closeness` times its elastic energy; 0.1 to 1 suits a start from far off. Model and loading
  /// must outlive it.
  InteriorPath(PanelModel& model, const PanelLoading& loading, Eigen::VectorXd u, double closeness);

  /// Takes a step. False, without one, where the stiffness is singular or the path has come as near
  /// to its end as numbers allow.
  [[nodiscard]] bool advance();

  [[nodiscard]] const Eigen::VectorXd& displacement() const { return u_; }
  [[nodiscard]] int solves() const { return solves_; }

 private:
  /// One number for masonry and one for contacts, which have other units.
  struct Pair {
    double crack = 0.0;
    double contact = 0.0;
  };
  /// What the points do when the displacement changes.
  struct Direction {
    Eigen::VectorXd u;
    std::vector<CrackChange> cracks;
    std::vector<ContactChange> contacts;
    double reach = 0.0;  ///< largest step inside the cones
  };

  [[nodiscard]] const PanelMaterial* cracking(int quad) const;
  template <class Work>
  void for_each_crack(const Work& work) const;

  void place_cracks(double closeness);
  void place_contacts(double closeness);
  [[nodiscard]] Direction no_direction() const;
  void linearise_points();
  [[nodiscard]] Eigen::VectorXd out_of_balance(const Direction& aims,
                                               SparseStiffness* stiffness) const;
  void solve(Direction& direction, const Eigen::VectorXd& out_of_balance);
  [[nodiscard]] std::optional<Direction> predictor();
  [[nodiscard]] Direction corrected(const Direction& predictor, Pair target);
  [[nodiscard]] std::optional<Direction> centred(const Direction& direction, Pair target);
  [[nodiscard]] Pair mean_products(double length, const Direction& direction) const;
  [[nodiscard]] double part_left() const;
  void move(double length, const Direction& direction);

  PanelModel& model_;
  const PanelLoading& loading_;
  Eigen::VectorXd u_;
  SparseStiffness stiffness_;
  std::vector<InteriorCrack> cracks_;  // of each Gauss point; unused where masonry cannot crack
  std::vector<LinearisedCrack> crack_lines_;
  std::vector<const ContactPoint*> contact_points_;  // of all beds, one after the other
  std::vector<std::size_t> first_of_bed_;
  std::vector<InteriorContact> contacts_;
  std::vector<ContactLine> contact_lines_;
  Pair mean_;   // products now
  Pair start_;  // and at first
  int solves_ = 0;
};

}  // namespace deadshore::solver
