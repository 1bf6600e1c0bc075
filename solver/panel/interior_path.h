#pragma once

#include "solver/conic/interior_step.h"
#include "solver/panel/panel_model.h"

#include <Eigen/Core>

#include <vector>

namespace deadshore::solver {

/// A primal-dual interior-point method for the displacement of least energy. The number of its
/// steps hardly depends on the mesh or on the tensile strength. It only nears the end of its
/// central path, so Newton's method by the law itself has to finish.
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
/// pushes differ in units, so that each kind has a target complementarity of its own. And there is
/// no duality gap to stop at: Newton's method by the law is tried on the way (newton.h) and ends
/// exactly.
class InteriorPath {
 public:
  /// Starts at displacement `u` (2 per node, mm), where every pair of a kind gets the same
  /// complementarity: the mean elastic energy. Model and loading must outlive it.
  InteriorPath(PanelModel& model, const PanelLoading& loading, Eigen::VectorXd u);

  /// Takes a step. False, without one, where the stiffness is singular or the path has come as near
  /// to its end as numbers allow.
  [[nodiscard]] bool advance();

  /// Where it is now, 2 per node, mm.
  [[nodiscard]] const Eigen::VectorXd& displacement() const { return u_; }

  /// A direction, as `interior_step` asks for it; so do the functions below.
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
    Mohr misfit;                ///< residual of the law `eps = C^-1 stress + L`, a strain
    Eigen::Matrix3d stiffness;  ///< of masonry and crack together, without the residual stiffness
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

/// A stress in Voigt form as a point of the cone's space; see `Mohr`.
[[nodiscard]] Mohr mohr_of_stress(const Voigt& stress);
/// A strain in Voigt form likewise, so that its dot product with a stress is their work.
[[nodiscard]] Mohr mohr_of_strain(const Voigt& strain);
/// The stress in Voigt form that `mohr_of_stress` gives this point for.
[[nodiscard]] Voigt stress_of(const Mohr& mohr);

/// The point of the central path at one point of masonry: allowance below the tensile strength
/// (slack, N/mm2) and crack strain (multiplier) at `strain`, such that their Jordan product is
/// `product` (N/mm2) times the unit.
/// \pre the material has a tensile strength
[[nodiscard]] ConePair<Mohr> central_crack(const PanelMaterial& material, const Voigt& strain,
                                           double product);

/// The point of the central path at one point of contact: push (slack, N/mm) and gap (multiplier,
/// mm) such that they obey the bed's law and their product is `product`, N.
/// \param stiffness of the bed, N/mm2
/// \param closure approach past the rest, mm
[[nodiscard]] ConePair<double> central_contact(double stiffness, double closure, double product);

}  // namespace deadshore::solver
