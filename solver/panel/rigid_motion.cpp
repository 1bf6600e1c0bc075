#include "solver/panel/rigid_motion.h"

#include "mesh/mesh_part.h"
#include "solver/fem/dense_symmetric.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

// A motion is held where the squares of its movements, summed over all that holds, are more than
// this part of the largest such sum.
constexpr double least_hold = 1e-13;
constexpr double clearly = 0.99;  // of a motion, to be called by its name

/// "a, b or c"
std::string one_of(const std::vector<std::string>& words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? " or " : ", ";
    text += words[i];
  }
  return text;
}

}  // namespace

RigidMotions::RigidMotions(const mesh::QuadMesh& mesh, std::span<const Support> supports,
                           const std::optional<BeamLine>& beam)
    : mesh_(mesh), beam_(beam), body_of_node_(mesh.nodes.size(), -1) {
  const std::vector<char> all(static_cast<std::size_t>(mesh.quad_count()), 1);
  const auto parts = mesh::connected_parts(mesh, all);
  for (const std::vector<int>& part : parts) {
    for (const int quad : part) {
      for (const int node : mesh.nodes_of(quad)) {
        body_of_node_[static_cast<std::size_t>(node)] = static_cast<int>(bodies_.size());
      }
    }
    const mesh::Box box = mesh::box_around(mesh, part);
    const std::string name = parts.size() == 1
                                 ? "the wall"
                                 : fmt::format("the masonry between x = {:.2f} m and {:.2f} m",
                                               box.x.from / 1000.0, box.x.to / 1000.0);
    bodies_.push_back(
        {name, {box.x.middle(), box.y.middle()}, 0.5 * std::hypot(box.x.length(), box.y.length())});
  }
  if (beam_) {
    const double half = 0.5 * (beam_->x.back() - beam_->x.front());
    bodies_.push_back({"the beam", {beam_->x.front() + half, 0.0}, half});
  }
  const Eigen::Index count = 3 * static_cast<Eigen::Index>(bodies_.size());
  held_by_supports_ = Eigen::MatrixXd::Zero(count, count);
  for (const Support& support : supports) {
    const Eigen::VectorXd motions = motions_at(support.node, support.component);
    held_by_supports_ += motions * motions.transpose();
  }
  if (beam_) held_by_supports_(count - 3, count - 3) += 1.0;  // it has no movement along x
}

/// Movement of a displacement under a unit of each motion.
Eigen::VectorXd RigidMotions::motions_at(int node, int component) const {
  Eigen::VectorXd motions = Eigen::VectorXd::Zero(3 * static_cast<Eigen::Index>(bodies_.size()));
  if (node >= mesh_.node_count()) {
    const Body& body = bodies_.back();
    const double x = beam_->x[static_cast<std::size_t>(node - mesh_.node_count())];
    if (component == 0) {
      motions.tail<1>() << beam_->rotation_length() / body.size;
    } else {
      motions.tail<2>() << 1.0, (x - body.centre.x) / body.size;
    }
    return motions;
  }
  const int index = body_of_node_[static_cast<std::size_t>(node)];
  if (index < 0) return motions;
  const Body& body = bodies_[static_cast<std::size_t>(index)];
  const mesh::Point& p = mesh_.nodes[static_cast<std::size_t>(node)];
  const double lever = component == 0 ? body.centre.y - p.y : p.x - body.centre.x;
  motions(3 * index + component) = 1.0;
  motions(3 * index + 2) = lever / body.size;
  return motions;
}

std::optional<std::string> RigidMotions::unheld(
    std::span<const ContactPoint* const> contacts) const {
  Eigen::MatrixXd held = held_by_supports_;
  for (const ContactPoint* contact : contacts) {
    Eigen::VectorXd motions = Eigen::VectorXd::Zero(held.rows());
    for (const LinearForm::Term& term : contact->form.active_terms()) {
      motions += term.coefficient * motions_at(term.node(), term.component());
    }
    held += motions * motions.transpose();
  }
  const Eigenpairs pairs = eigenpairs(held);
  const double least = least_hold * std::max(1.0, pairs.values.maxCoeff());
  const Eigen::Index free = (pairs.values.array() < least).count();
  if (free == 0) return {};
  // How much of each motion lies among those that are free: a row for each body.
  const Eigen::VectorXd part = pairs.vectors.leftCols(free).rowwise().squaredNorm();
  const Eigen::Matrix<double, Eigen::Dynamic, 3, Eigen::RowMajor> by_body =
      part.reshaped<Eigen::RowMajor>(part.size() / 3, 3);
  Eigen::Index freest = 0;
  by_body.rowwise().sum().maxCoeff(&freest);
  std::vector<std::string> ways;
  if (by_body(freest, 0) > clearly) ways.emplace_back("move sideways");
  if (by_body(freest, 1) > clearly) ways.emplace_back("move up and down");
  if (ways.empty() || by_body(freest, 2) > clearly) ways.emplace_back("turn");
  return fmt::format("{} can {}: nothing holds it", bodies_[static_cast<std::size_t>(freest)].name,
                     one_of(ways));
}

}  // namespace deadshore::solver
