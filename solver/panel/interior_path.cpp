#include "solver/panel/interior_path.h"

#include "solver/fem/quad_shape.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace deadshore::solver {

namespace {

// Part of the way to the boundary that a step may go. More leaves some points so far from the path
// that every other step is lost.
constexpr double part_of_reach = 0.9;
constexpr double least_centring = 1e-6;  // part of the mean product that a step aims at
constexpr double end_of_path = 1e-14;    // mean product over that at the start
constexpr double least_step = 1e-4;      // less means stuck
constexpr int most_centrings = 3;
constexpr double longer = 0.1;          // by which a centring tries to lengthen the step
constexpr double least_gain = 0.01;     // by which it must
constexpr double least_closure = 1e-3;  // mm, where nothing presses yet
constexpr double least_strain = 1e-7;   // where nothing is strained yet

std::size_t index(int quad, int point) {
  return static_cast<std::size_t>(quad) * quad_points + static_cast<std::size_t>(point);
}

/// Mehrotra's rule: the part of the mean product to aim at, from what the predictor would leave.
double centring_part(double left_by_predictor, double now) {
  if (!(now > 0.0)) return 0.0;
  return std::clamp(std::pow(left_by_predictor / now, 3), least_centring, 1.0);
}

}  // namespace

InteriorPath::InteriorPath(PanelModel& model, const PanelLoading& loading, Eigen::VectorXd u,
                           double closeness)
    : model_(model), loading_(loading), u_(std::move(u)), stiffness_(model.empty_stiffness()) {
  for (const ContactBed& bed : loading.beds) {
    first_of_bed_.push_back(contact_points_.size());
    for (const ContactPoint& point : bed.points) contact_points_.push_back(&point);
  }
  place_cracks(closeness);
  place_contacts(closeness);
  linearise_points();
  start_ = mean_ = mean_products(0.0, no_direction());
}

/// Calls `work(quad, point, index, material)` for each Gauss point where masonry can crack.
template <class Work>
void InteriorPath::for_each_crack(const Work& work) const {
  const int quads = model_.mesh().quad_count();
#pragma omp parallel for schedule(static) if (quads > 256)
  for (int quad = 0; quad < quads; ++quad) {
    const PanelMaterial* material = cracking(quad);
    if (material == nullptr) continue;
    for (int point = 0; point < quad_points; ++point) {
      work(quad, point, index(quad, point), *material);
    }
  }
}

const PanelMaterial* InteriorPath::cracking(int quad) const {
  const int region = model_.mesh().region_of_quad[static_cast<std::size_t>(quad)];
  const PanelMaterial& material = loading_.materials[static_cast<std::size_t>(region)];
  return material.tensile_strength ? &material : nullptr;
}

void InteriorPath::place_cracks(double closeness) {
  const std::size_t count = index(model_.mesh().quad_count(), 0);
  cracks_.resize(count);
  crack_lines_.resize(count);
  std::vector<double> energies(count, -1.0);  // of the stress, twice over
  for_each_crack([&](int quad, int point, std::size_t i, const PanelMaterial& m) {
    const Voigt strain = model_.strain(loading_, quad, point, u_);
    energies[i] = m.E * least_strain * least_strain +
                  respond(m, strain).stress.dot(strain - crack_strain(m, strain));
  });
  double sum = 0.0;
  double cracking_points = 0.0;
  for (const double energy : energies) {
    if (energy < 0.0) continue;
    sum += energy;
    cracking_points += 1.0;
  }
  const double mu = cracking_points > 0.0 ? closeness * sum / cracking_points : 0.0;
  for_each_crack([&](int quad, int point, std::size_t i, const PanelMaterial& m) {
    cracks_[i] = central_crack(m, model_.strain(loading_, quad, point, u_), mu);
  });
}

void InteriorPath::place_contacts(double closeness) {
  double sum = 0.0;
  for (const ContactPoint* point : contact_points_) {
    const double closure = std::max(least_closure, std::abs(point->closure(u_)));
    sum += point->stiffness * closure * closure;
  }
  const double count = static_cast<double>(contact_points_.size());
  for (const ContactPoint* point : contact_points_) {
    contacts_.push_back(
        central_contact(point->stiffness, point->closure(u_), closeness * sum / count));
  }
  contact_lines_.resize(contacts_.size());
}

InteriorPath::Direction InteriorPath::no_direction() const {
  Direction direction;
  direction.cracks.resize(cracks_.size());
  direction.contacts.resize(contacts_.size());
  return direction;
}

void InteriorPath::linearise_points() {
  for_each_crack([&](int quad, int point, std::size_t i, const PanelMaterial& m) {
    crack_lines_[i] = linearise(m, cracks_[i], model_.strain(loading_, quad, point, u_));
  });
  for (std::size_t i = 0; i < contacts_.size(); ++i) {
    const ContactPoint& point = *contact_points_[i];
    contact_lines_[i] = linearise(point.stiffness, contacts_[i], point.closure(u_));
  }
}

Eigen::VectorXd InteriorPath::out_of_balance(const Direction& aims,
                                             SparseStiffness* stiffness) const {
  const auto masonry = [&](int quad, int point, const Voigt& strain) {
    if (const PanelMaterial* m = cracking(quad)) {
      const std::size_t i = index(quad, point);
      return answer(*m, crack_lines_[i], aims.cracks[i], strain);
    }
    const int region = model_.mesh().region_of_quad[static_cast<std::size_t>(quad)];
    const PanelResponse elastic =
        respond(loading_.materials[static_cast<std::size_t>(region)], strain);
    return PointAnswer{elastic.stress, elastic.tangent};
  };
  const auto contact = [&](std::size_t bed, std::size_t point, double) {
    const std::size_t i = first_of_bed_[bed] + point;
    return answer(contacts_[i], contact_lines_[i], aims.contacts[i]);
  };
  return model_.gather_free(loading_.load -
                            model_.assemble(loading_, u_, masonry, contact, stiffness));
}

void InteriorPath::solve(Direction& direction, const Eigen::VectorXd& out_of_balance) {
  direction.u = model_.spread_out(model_.factor().solve(out_of_balance));
  ++solves_;
  for_each_crack([&](int quad, int point, std::size_t i, const PanelMaterial&) {
    follow(crack_lines_[i], model_.strain(quad, point, direction.u), direction.cracks[i]);
  });
  direction.reach = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < contacts_.size(); ++i) {
    const ContactPoint& point = *contact_points_[i];
    follow(contacts_[i], contact_lines_[i], point.approach(direction.u), direction.contacts[i]);
    direction.reach = std::min(direction.reach, largest_step(contacts_[i], direction.contacts[i]));
  }
  for (int quad = 0; quad < model_.mesh().quad_count(); ++quad) {
    if (cracking(quad) == nullptr) continue;
    for (std::size_t i = index(quad, 0); i < index(quad + 1, 0); ++i) {
      direction.reach =
          std::min(direction.reach, largest_step(crack_lines_[i], direction.cracks[i]));
    }
  }
}

std::optional<InteriorPath::Direction> InteriorPath::predictor() {
  Direction direction = no_direction();
  for_each_crack([&](int, int, std::size_t i, const PanelMaterial&) {
    direction.cracks[i].aim = aim_at(crack_lines_[i], 0.0, {});
  });
  for (std::size_t i = 0; i < contacts_.size(); ++i) {
    direction.contacts[i].aim = aim_at(contacts_[i], 0.0, {});
  }
  const Eigen::VectorXd force = out_of_balance(direction, &stiffness_);
  if (!force.allFinite() || !model_.factor().factorize(stiffness_)) return {};
  solve(direction, force);
  return direction;
}

InteriorPath::Direction InteriorPath::corrected(const Direction& predictor, Pair target) {
  Direction direction = no_direction();
  for_each_crack([&](int, int, std::size_t i, const PanelMaterial&) {
    direction.cracks[i].aim = aim_at(crack_lines_[i], target.crack, predictor.cracks[i]);
  });
  for (std::size_t i = 0; i < contacts_.size(); ++i) {
    direction.contacts[i].aim = aim_at(contacts_[i], target.contact, predictor.contacts[i]);
  }
  solve(direction, out_of_balance(direction, nullptr));
  return direction;
}

std::optional<InteriorPath::Direction> InteriorPath::centred(const Direction& direction,
                                                             Pair target) {
  const double length = std::min(1.0, (1.0 + longer) * direction.reach + longer);
  Direction better = direction;
  for_each_crack([&](int, int, std::size_t i, const PanelMaterial&) {
    better.cracks[i].aim += centring(crack_lines_[i], target.crack, length, direction.cracks[i]);
  });
  solve(better, out_of_balance(better, nullptr));
  if (better.reach < direction.reach + least_gain) return {};
  return better;
}

InteriorPath::Pair InteriorPath::mean_products(double length, const Direction& direction) const {
  Pair sum;
  double cracking_points = 0.0;
  for (int quad = 0; quad < model_.mesh().quad_count(); ++quad) {
    if (cracking(quad) == nullptr) continue;
    for (std::size_t i = index(quad, 0); i < index(quad + 1, 0); ++i) {
      const Eigen::Matrix2d point = crack_lines_[i].scaling.point.asDiagonal();
      const CrackChange& change = direction.cracks[i];
      sum.crack +=
          (point + length * change.crack).cwiseProduct(point + length * change.allowance).sum();
      cracking_points += 2.0;
    }
  }
  for (std::size_t i = 0; i < contacts_.size(); ++i) {
    sum.contact += (contacts_[i].gap + length * direction.contacts[i].gap) *
                   (contacts_[i].push + length * direction.contacts[i].push);
  }
  const double contacts = static_cast<double>(contacts_.size());
  return {sum.crack / std::max(1.0, cracking_points), sum.contact / std::max(1.0, contacts)};
}

void InteriorPath::move(double length, const Direction& direction) {
  mean_ = mean_products(length, direction);
  u_ += length * direction.u;
  for_each_crack([&](int, int, std::size_t i, const PanelMaterial&) {
    cracks_[i] = moved(cracks_[i], crack_lines_[i], length, direction.cracks[i]);
  });
  for (std::size_t i = 0; i < contacts_.size(); ++i) {
    contacts_[i].gap += length * direction.contacts[i].gap;
    contacts_[i].push += length * direction.contacts[i].push;
  }
  linearise_points();
}

/// Of the mean products at the start.
double InteriorPath::part_left() const {
  return std::max(start_.crack > 0.0 ? mean_.crack / start_.crack : 0.0,
                  start_.contact > 0.0 ? mean_.contact / start_.contact : 0.0);
}

bool InteriorPath::advance() {
  if (part_left() <= end_of_path) return false;
  const std::optional<Direction> first = predictor();
  if (!first) return false;
  const Pair left = mean_products(std::min(1.0, first->reach), *first);
  const double wall_part = centring_part(left.crack, mean_.crack);
  const double contact_part = std::max(wall_part, centring_part(left.contact, mean_.contact));
  const Pair target{wall_part * mean_.crack, contact_part * mean_.contact};
  Direction direction = corrected(*first, target);
  for (int i = 0; i < most_centrings && direction.reach < 1.0; ++i) {
    std::optional<Direction> better = centred(direction, target);
    if (!better) break;
    direction = std::move(*better);
  }
  const double length = std::min(1.0, part_of_reach * direction.reach);
  if (!(length > least_step)) return false;
  move(length, direction);
  return true;
}

}  // namespace deadshore::solver
