#include "solver/panel/interior_path.h"

#include "solver/fem/quad_shape.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

// A larger fraction to the boundary takes some points so far off the central path that the next
// step is short.
constexpr StepRules rules{.fraction_to_boundary = 0.9,
                          .one_length = true,
                          .one_target = false,
                          .least_centring = 1e-6,
                          .most_corrections = 3,
                          .least_length = 1e-4};
constexpr double end_of_path = 1e-14;   // mean complementarity over that at the start
constexpr double least_closure = 1e-3;  // mm, where nothing presses yet
constexpr double least_strain = 1e-7;   // where nothing is strained yet

// Newton's method for the start at one point of masonry: fraction to the boundary of a step, steps,
// and relative change at which it ends.
constexpr double most_reach = 0.9;
constexpr int most_central_steps = 100;
constexpr double central_tolerance = 1e-10;

/// Elastic strain per stress, both as Mohr: of the mean, then of the other two.
struct MohrCompliance {
  double mean = 0.0;
  double deviator = 0.0;

  explicit MohrCompliance(const PanelMaterial& m)
      : mean(2.0 * (1.0 - m.nu) / m.E), deviator(2.0 * (1.0 + m.nu) / m.E) {}
  [[nodiscard]] Mohr strain(const Mohr& stress) const {
    return {mean * stress(0), deviator * stress(1), deviator * stress(2)};
  }
};

/// A map from strain to stress, both as Mohr, in Voigt's form.
Eigen::Matrix3d voigt_of(const Eigen::Matrix3d& map) {
  const Eigen::Matrix3d axes{{1.0, 1.0, 0.0}, {1.0, -1.0, 0.0}, {0.0, 0.0, 1.0}};
  return axes * map * axes.transpose();
}

/// Principal crack strains l with `f_t - C (eps - l) = mu / l` at principal strains eps: Newton on
/// the least of a barrier function, which is convex.
Eigen::Vector2d central_openings(const Eigen::Matrix2d& C, double tensile_strength,
                                 const Eigen::Vector2d& strain, double mu) {
  const Eigen::Vector2d surplus = Eigen::Vector2d::Constant(tensile_strength) - C * strain;
  Eigen::Vector2d opening;  // each as if it were alone
  for (int i = 0; i < 2; ++i) {
    const double root = std::sqrt(surplus(i) * surplus(i) + 4.0 * mu * C(i, i));
    opening(i) =
        surplus(i) > 0.0 ? 2.0 * mu / (root + surplus(i)) : (root - surplus(i)) / (2.0 * C(i, i));
  }
  for (int step = 0; step < most_central_steps; ++step) {
    const Eigen::Vector2d pull = mu * opening.cwiseInverse();
    const Eigen::Matrix2d curvature = C + Eigen::Matrix2d(pull.cwiseQuotient(opening).asDiagonal());
    const Eigen::Vector2d change = curvature.llt().solve(pull - surplus - C * opening);
    const Eigen::Vector2d relative = change.cwiseQuotient(opening);
    opening += std::min(1.0, -most_reach / std::min(relative.minCoeff(), -most_reach)) * change;
    if (relative.cwiseAbs().maxCoeff() < central_tolerance) break;
  }
  return opening;
}

}  // namespace

Mohr mohr_of_stress(const Voigt& stress) {
  return {0.5 * (stress(0) + stress(1)), 0.5 * (stress(0) - stress(1)), stress(2)};
}

Mohr mohr_of_strain(const Voigt& strain) {
  return {strain(0) + strain(1), strain(0) - strain(1), strain(2)};
}

Voigt stress_of(const Mohr& mohr) {
  return {mohr(0) + mohr(1), mohr(0) - mohr(1), mohr(2)};
}

ConePair<Mohr> central_crack(const PanelMaterial& material, const Voigt& strain, double product) {
  const Mohr mohr = mohr_of_strain(strain);
  const double radius = std::sqrt(mohr(1) * mohr(1) + mohr(2) * mohr(2));
  const Eigen::Vector2d axis =
      radius > 0.0 ? Eigen::Vector2d(mohr.tail<2>() / radius) : Eigen::Vector2d::UnitX();
  const Eigen::Matrix2d C = elastic_stiffness(material.E, material.nu).topLeftCorner<2, 2>();
  const Eigen::Vector2d principal(0.5 * (mohr(0) + radius), 0.5 * (mohr(0) - radius));
  const double mu = 0.5 * product;  // of each principal direction
  const Eigen::Vector2d opening = central_openings(C, *material.tensile_strength, principal, mu);
  const Eigen::Vector2d allowance = mu * opening.cwiseInverse();
  ConePair<Mohr> pair;
  pair.slack << 0.5 * allowance.sum(), 0.5 * (allowance(0) - allowance(1)) * axis;
  pair.multiplier << opening.sum(), (opening(0) - opening(1)) * axis;
  return pair;
}

ConePair<double> central_contact(double stiffness, double closure, double product) {
  // Root of k (closure + gap) gap = product, in the form that does not cancel.
  const double root = std::sqrt(closure * closure + 4.0 * product / stiffness);
  const double gap =
      closure > 0.0 ? 2.0 * product / (stiffness * (root + closure)) : 0.5 * (root - closure);
  return {product / gap, gap, {}, {}};
}

InteriorPath::InteriorPath(PanelModel& model, const PanelLoading& loading, Eigen::VectorXd u)
    : model_(model),
      loading_(loading),
      u_(std::move(u)),
      stiffness_(model.empty_stiffness()),
      contacts_(points_of(loading.beds)) {
  std::size_t contacts = 0;
  for (const ContactBed& bed : loading.beds) {
    first_of_bed_.push_back(contacts);
    contacts += bed.points.size();
  }
  place_cracks();
  place_contacts();
  start_ = complementarity_of(pairs_);
}

const PanelMaterial& InteriorPath::material(int quad) const {
  const int region = model_.mesh().region_of_quad[static_cast<std::size_t>(quad)];
  return loading_.materials[static_cast<std::size_t>(region)];
}

/// Calls `work(i, quad, point, material)` for each point where masonry can crack.
template <class Work>
void InteriorPath::for_each_crack(const Work& work) const {
  const int quads = model_.mesh().quad_count();
#pragma omp parallel for schedule(static) if (quads > 256)
  for (int quad = 0; quad < quads; ++quad) {
    const int first = first_cone_[static_cast<std::size_t>(quad)];
    for (int point = 0; first >= 0 && point < quad_points; ++point) {
      work(static_cast<std::size_t>(first + point), quad, point, material(quad));
    }
  }
}

void InteriorPath::place_cracks() {
  int cones = 0;
  for (int quad = 0; quad < model_.mesh().quad_count(); ++quad) {
    const bool cracks = material(quad).tensile_strength.has_value();
    first_cone_.push_back(cracks ? cones : -1);
    if (cracks) cones += quad_points;
  }
  cracks_.resize(static_cast<std::size_t>(cones));
  pairs_.cones.resize(cracks_.size());
  std::vector<double> energy(cracks_.size());  // of the stress, twice over
  for_each_crack([&](std::size_t i, int quad, int point, const PanelMaterial& m) {
    const Voigt strain = model_.strain(loading_, quad, point, u_);
    energy[i] = m.E * least_strain * least_strain +
                respond(m, strain).stress.dot(strain - crack_strain(m, strain));
  });
  double sum = 0.0;
  for (const double one : energy) sum += one;
  const double product = 2.0 * sum / std::max(1, cones);
  for_each_crack([&](std::size_t i, int quad, int point, const PanelMaterial& m) {
    pairs_.cones[i] = central_crack(m, model_.strain(loading_, quad, point, u_), product);
  });
}

void InteriorPath::place_contacts() {
  double sum = 0.0;
  for (const ContactPoint* point : contacts_) {
    const double closure = std::max(least_closure, std::abs(point->closure(u_)));
    sum += point->stiffness * closure * closure;
  }
  const double product = sum / static_cast<double>(contacts_.size());
  for (const ContactPoint* point : contacts_) {
    pairs_.bounds.push_back(central_contact(point->stiffness, point->closure(u_), product));
  }
}

/// Residual of a contact's law `push = k (closure + gap)`, as a closure, mm.
double InteriorPath::contact_misfit(std::size_t contact) const {
  const ConePair<double>& pair = pairs_.bounds[contact];
  const ContactPoint& point = *contacts_[contact];
  return point.closure(u_) + pair.multiplier - pair.slack / point.stiffness;
}

/// Stiffness of a contact's bed in series with its gap, after elimination of the pair, N/mm2.
double InteriorPath::contact_stiffness(std::size_t contact) const {
  return 1.0 /
         (1.0 / contacts_[contact]->stiffness + pairs_.bounds[contact].scaling.inverse_square());
}

/// Works out, at every point of masonry, the tangent stiffness after elimination of the pair, and
/// the residual of its law. The law is linear in strain, stress and crack, so that this residual is
/// but round-off that the steps so far have left.
void InteriorPath::linearise() {
  for_each_crack([&](std::size_t i, int quad, int point, const PanelMaterial& m) {
    const Mohr strain = mohr_of_strain(model_.strain(loading_, quad, point, u_));
    const ConePair<Mohr>& pair = pairs_.cones[i];
    const MohrCompliance compliance(m);
    const Mohr stress = *m.tensile_strength * unit_of<Mohr>() - pair.slack;
    cracks_[i].misfit = compliance.strain(stress) + pair.multiplier - strain;
    cracks_[i].stiffness = pair.scaling.inverse_with(compliance.mean, compliance.deviator);
  });
}

bool InteriorPath::factorise() {
  linearise();
  const Eigen::VectorXd force = out_of_balance(pairs_.zeros(), &stiffness_);
  return force.allFinite() && model_.factor().factorize(stiffness_);
}

Eigen::VectorXd InteriorPath::out_of_balance(const ConeValues& targets,
                                             SparseStiffness* stiffness) const {
  const auto masonry = [&](int quad, int point, const Voigt& strain) {
    const PanelMaterial& m = material(quad);
    const int first = first_cone_[static_cast<std::size_t>(quad)];
    if (first < 0) {
      const PanelResponse elastic = respond(m, strain);
      return PointStress{elastic.stress, elastic.tangent};
    }
    const std::size_t i = static_cast<std::size_t>(first + point);
    const CrackPoint& crack = cracks_[i];
    const Mohr stress = *m.tensile_strength * unit_of<Mohr>() - pairs_.cones[i].slack -
                        crack.stiffness * (crack.misfit + targets.cones[i]);
    const double r = m.residual;
    const Eigen::Matrix3d C = elastic_stiffness(m.E, m.nu);
    return PointStress{(1.0 - r) * stress_of(stress) + r * C * strain,
                       (1.0 - r) * voigt_of(crack.stiffness) + r * C};
  };
  const auto contact = [&](std::size_t bed, std::size_t point, double) {
    const std::size_t i = first_of_bed_[bed] + point;
    const double k = contact_stiffness(i);
    return PointPush{pairs_.bounds[i].slack + k * (targets.bounds[i] + contact_misfit(i)), k};
  };
  return model_.gather_free(loading_.load -
                            model_.assemble(loading_, u_, masonry, contact, stiffness));
}

InteriorPath::Direction InteriorPath::direction(const ConeValues& targets) {
  Direction step{{pairs_.zeros(), pairs_.zeros()},
                 model_.spread_out(model_.factor().solve(out_of_balance(targets, nullptr)))};
  // The multipliers by elasticity, which loses nothing to round-off where a cone is stiff.
  for_each_crack([&](std::size_t i, int quad, int point, const PanelMaterial& m) {
    const Mohr strain = mohr_of_strain(model_.strain(quad, point, step.u)) - cracks_[i].misfit;
    const Mohr stress = cracks_[i].stiffness * (strain - targets.cones[i]);
    step.cones.slack.cones[i] = -stress;
    step.cones.multiplier.cones[i] = strain - MohrCompliance(m).strain(stress);
  });
  for (std::size_t i = 0; i < contacts_.size(); ++i) {
    const double closure = contacts_[i]->approach(step.u) + contact_misfit(i);
    const double push = contact_stiffness(i) * (closure + targets.bounds[i]);
    step.cones.slack.bounds[i] = push;
    step.cones.multiplier.bounds[i] = push / contacts_[i]->stiffness - closure;
  }
  return step;
}

/// Mean complementarity over that at the start, the larger of cones and bounds.
double InteriorPath::part_left() const {
  const Complementarity now = complementarity_of(pairs_);
  return std::max(start_.cones > 0.0 ? now.cones / start_.cones : 0.0,
                  start_.bounds > 0.0 ? now.bounds / start_.bounds : 0.0);
}

bool InteriorPath::advance() {
  return part_left() > end_of_path && interior_step(*this, rules);
}

}  // namespace deadshore::solver
