#pragma once

#include "solver/panel/panel_law.h"
#include "solver/panel/panel_model.h"
#include "solver/panel/psd_cone.h"

#include <Eigen/Core>

namespace deadshore::solver {

// Points of a panel on the way to its law from inside.
//
// Masonry: the cracked law is the least of `(eps - L) : C : (eps - L) / 2 + f_t tr L` over crack
// strains L >= 0 (positive semidefinite). At the least the allowance `S = f_t I - C (eps - L)`, by
// which the stress stays below the tensile strength, is >= 0 too and S L = 0. An interior point
// keeps both definite with S L near mu I, while mu goes to 0. Contact: the same with a gap g >= 0
// and the push `k (closure + g)` >= 0.
//
// A step linearises these conditions, with L and S scaled as in Nesterov & Todd, Math. Oper. Res.
// 22 (1997) 1-42. Eliminating L and S at each point leaves an elastic-like answer in the strain
// alone, so that the panel's stiffness keeps its pattern.

struct InteriorCrack {
  Eigen::Matrix2d crack;      ///< L, a strain
  Eigen::Matrix2d allowance;  ///< S, a stress

  /// Twice mu, on the path.
  [[nodiscard]] double gap() const { return (crack * allowance).trace(); }
};

/// A change of an interior crack in the frame of its scaling, and the aim it is the answer to: the
/// change of S L in that frame.
struct CrackChange {
  Eigen::Matrix2d aim = Eigen::Matrix2d::Zero();
  Eigen::Matrix2d crack = Eigen::Matrix2d::Zero();
  Eigen::Matrix2d allowance = Eigen::Matrix2d::Zero();
};

/// The point with S L = mu I at `strain`. Needs a tensile strength.
[[nodiscard]] InteriorCrack central_crack(const PanelMaterial& material, const Voigt& strain,
                                          double mu);

/// The conditions at an interior crack, linearised.
struct LinearisedCrack {
  PsdScaling scaling;
  Eigen::Matrix3d tangent;  ///< of the cracked law without the residual
  Voigt stress;             ///< f_t I - S
  Voigt lag;                ///< strain by which L and S miss `S = f_t I - C (eps - L)`
};
[[nodiscard]] LinearisedCrack linearise(const PanelMaterial& material, const InteriorCrack& point,
                                        const Voigt& strain);

/// Stress (with the residual's) after a step that aims at `change.aim`, where the strain stays;
/// and its rate with the strain.
[[nodiscard]] PointAnswer answer(const PanelMaterial& material, const LinearisedCrack& line,
                                 const CrackChange& change, const Voigt& strain);

/// Works out the change that goes with `change.aim` and a change of the strain.
void follow(const LinearisedCrack& line, const Voigt& strain_change, CrackChange& change);

/// Largest step along a change that keeps L and S in the cone.
[[nodiscard]] double largest_step(const LinearisedCrack& line, const CrackChange& change);

/// The aim at S L = mu I with the second-order term of a change already tried (Mehrotra, SIAM J.
/// Optim. 2 (1992) 575-601).
[[nodiscard]] Eigen::Matrix2d aim_at(const LinearisedCrack& line, double mu,
                                     const CrackChange& tried);

/// What to add to the aim so that a step of `length` does not leave S L far from mu I (Gondzio,
/// Comput. Optim. Appl. 6 (1996) 137-156).
[[nodiscard]] Eigen::Matrix2d centring(const LinearisedCrack& line, double mu, double length,
                                       const CrackChange& tried);

/// The point after a step of `length`.
[[nodiscard]] InteriorCrack moved(const InteriorCrack& point, const LinearisedCrack& line,
                                  double length, const CrackChange& change);

/// The same for a point of contact, by scalars: a gap (mm) and a push (N/mm).
struct InteriorContact {
  double gap = 0.0;
  double push = 0.0;
};
struct ContactChange {
  double aim = 0.0;  ///< change of gap * push
  double gap = 0.0;
  double push = 0.0;
};
struct ContactLine {
  double stiffness = 0.0;  ///< of bed and gap in series
  double lag = 0.0;        ///< closure by which gap and push miss `push = k (closure + gap)`
};
[[nodiscard]] InteriorContact central_contact(double stiffness, double closure, double mu);
[[nodiscard]] ContactLine linearise(double stiffness, const InteriorContact& point, double closure);
[[nodiscard]] ContactAnswer answer(const InteriorContact& point, const ContactLine& line,
                                   const ContactChange& change);
void follow(const InteriorContact& point, const ContactLine& line, double closure_change,
            ContactChange& change);
[[nodiscard]] double largest_step(const InteriorContact& point, const ContactChange& change);
[[nodiscard]] double aim_at(const InteriorContact& point, double mu, const ContactChange& tried);

}  // namespace deadshore::solver
