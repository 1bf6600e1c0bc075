#pragma once

#include "solver/conic/interior_step.h"
#include "solver/panel/panel_model.h"

#include <Eigen/Core>

#include <vector>

namespace deadshore::solver {

/// A primal-dual interior-point descent to the displacement of least energy: the number of steps
/// hardly depends on the mesh or the tensile strength. The end of the path is only neared: finish
/// with the law itself.
///
/// Masonry: the cracked law is the least of `(eps - L) : C : (eps - L) / 2 + f_t tr L` over crack
/// strains L >= 0 (positive semidefinite). At the least, the allowance `S = f_t I - C (eps - L)` by
/// which the stress stays below the tensile strength is >= 0 too, and S L = 0: a slack and its
/// multiplier on one cone. Contact: the same for the push >= 0 and the gap >= 0 of a point. Both
/// are eliminated point by point, which leaves an elastic-like answer in the strain alone, so that
/// the panel's stiffness keeps its pattern.
///
/// What limit analysis (LimitIterate) has otherwise: there the wall is rigid, so that stresses and
/// velocities go by steps of their own length; here elasticity ties them to one. Stresses and
/// pushes differ in units, so that each kind has a product of its own to aim at. And there is no
/// gap to stop at: Newton's method by the law is tried on the way (newton.h) and ends exactly.
class InteriorPath {
 public:
  /// Starts at displacement `u` (2 per node, mm), where every pair gets the same complementarity:
  /// the mean elastic energy. Model and loading must outlive it.
  InteriorPath(PanelModel& model, const PanelLoading& loading, Eigen::VectorXd u);

  /// Takes a step. False, without one, where the stiffness is singular or the path has come as near
  /// to its end as numbers allow.
  [[nodiscard]] bool advance();

  [[nodiscard]] const Eigen::VectorXd& displacement() const { return u_; }

  /// What `interior_step` asks for.
  struct Direction {
    ConeChanges cones;
    Eigen::VectorXd u;
  };
  [[nodiscard]] ConePairs& pairs() { return pairs_; }
  [[nodiscard]] bool factorise();
  [[nodiscard]] Direction direction(const ConeValues& targets);
  void move(const Direction& step, const StepLengths& lengths) { u_ += lengths.primal * step.u; }

 private:
  /// A point where masonry can crack.
  struct CrackPoint {
    Mohr misfit;                ///< strain by which the law `eps = C^-1 stress + L` is missed
    Eigen::Matrix3d stiffness;  ///< of the masonry and its crack, without the residual
  };

  template <class Work>
  void for_each_crack(const Work& work) const;
  void place_cracks();
  void place_contacts();
  void linearise();
  [[nodiscard]] Eigen::VectorXd out_of_balance(const ConeValues& targets,
                                               SparseStiffness* stiffness) const;
  [[nodiscard]] double contact_misfit(std::size_t contact) const;
  [[nodiscard]] double contact_stiffness(std::size_t contact) const;
  [[nodiscard]] double part_left() const;
  [[nodiscard]] const PanelMaterial& material(int quad) const;

  PanelModel& model_;
  const PanelLoading& loading_;
  Eigen::VectorXd u_;
  SparseStiffness stiffness_;
  std::vector<int> first_cone_;  ///< of each quadrilateral; -1 where it cannot crack
  std::vector<const ContactPoint*> contacts_;
  std::vector<std::size_t> first_of_bed_;  ///< among the contacts
  ConePairs pairs_;  ///< allowance and crack of each cracking point; push and gap of each contact
  std::vector<CrackPoint> cracks_;
  Complementarity start_;
};

/// The stress-like and the strain-like form of Voigt's: see `Mohr`.
[[nodiscard]] Mohr mohr_of_stress(const Voigt& stress);
[[nodiscard]] Mohr mohr_of_strain(const Voigt& strain);
[[nodiscard]] Voigt stress_of(const Mohr& mohr);

/// Allowance (N/mm2) and crack of masonry with a tensile strength at `strain`, such that their
/// Jordan product is `product` times the unit (N/mm2).
[[nodiscard]] ConePair<Mohr> central_crack(const PanelMaterial& material, const Voigt& strain,
                                           double product);

/// Push (N/mm) and gap (mm) at a closure, mm, on a bed of `stiffness` N/mm2; their product N.
[[nodiscard]] ConePair<double> central_contact(double stiffness, double closure, double product);

}  // namespace deadshore::solver
