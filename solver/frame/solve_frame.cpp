#include "solver/frame/solve_frame.h"

#include "solver/frame/frame_system.h"
#include "solver/frame/spring_contact.h"
#include "solver/job/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

namespace deadshore::solver {

namespace {

std::vector<NodeMovement> movements(const Eigen::VectorXd& u) {
  std::vector<NodeMovement> nodes;
  for (Eigen::Index i = 0; i < u.size(); i += 3) nodes.push_back({u(i), u(i + 1), u(i + 2)});
  return nodes;
}

std::vector<FrameReaction> reactions(const Frame& frame, const Eigen::VectorXd& out_of_balance) {
  std::vector<FrameReaction> result;
  for (const FrameSupport& support : frame.supports) {
    const auto at = out_of_balance.segment<3>(3 * support.node);
    result.push_back(
        {support.x ? at(0) : 0.0, support.y ? at(1) : 0.0, support.rotation ? at(2) : 0.0});
  }
  return result;
}

FrameSolution solution_of(const Frame& frame, const FrameSystem& system, const Eigen::VectorXd& u) {
  FrameSolution solution;
  solution.nodes = movements(u);
  solution.reactions = reactions(frame, resistance(system, u) - system.load);
  for (std::size_t i = 0; i < system.springs.size(); ++i) {
    const SpringRow& spring = system.springs[i];
    const double closure = spring.closure(u);
    const double force =
        spring.stiffness * (spring.compression_only ? std::max(closure, 0.0) : closure);
    auto& list =
        i < frame.springs.size() ? solution.spring_forces : solution.rotation_spring_moments;
    list.push_back(force);
  }
  for (std::size_t i = 0; i < system.elements.size(); ++i) {
    const FrameElement& element = system.elements[i];
    const EndVector nodes = system.of_member(frame, static_cast<int>(i), u);
    solution.members.push_back(
        {element.beam, element.start_state(nodes), element.loads, element.direction});
  }
  return solution;
}

std::vector<double> mean_axials(const Frame& frame, const FrameSystem& system,
                                const Eigen::VectorXd& u) {
  std::vector<double> axial;
  for (std::size_t i = 0; i < system.elements.size(); ++i) {
    axial.push_back(system.elements[i].mean_axial(system.of_member(frame, static_cast<int>(i), u)));
  }
  return axial;
}

/// Largest difference between two lists of forces, over the largest force in either or `size`.
double relative_change(const std::vector<double>& before, const std::vector<double>& after,
                       double size) {
  double difference = 0.0;
  for (std::size_t i = 0; i < before.size(); ++i) {
    difference = std::max(difference, std::abs(after[i] - before[i]));
    size = std::max({size, std::abs(after[i]), std::abs(before[i])});
  }
  return size > 0.0 ? difference / size : 0.0;
}

/// Second order by successive substitution: each pass solves the frame with the axial forces of the
/// pass before, which the elements follow exactly, and so is linear but for springs that open and
/// close.
class Passes {
 public:
  explicit Passes(const Frame& frame)
      : frame_(frame),
        axial_(frame.members.size(), 0.0),
        closed_(frame.springs.size() + frame.rotation_springs.size(), true) {}

  /// One pass; false, with the reason in the report, if it leads nowhere.
  [[nodiscard]] bool advance(FrameReport& report) {
    ++report.passes;
    std::string buckled;
    system_ = assemble(frame_, axial_, buckled);
    if (!system_) {
      report.unstable = true;
      report.reason = fmt::format("{} buckles under its load", buckled);
      return false;
    }
    const ContactResult contact = settle(*system_, closed_);
    report.contact_steps += contact.steps;
    if (contact.outcome == ContactOutcome::no_agreement) {
      report.reason = "the springs that bear could not be found: they keep opening and closing";
      return false;
    }
    if (contact.outcome == ContactOutcome::singular) {
      const std::string movement = freest_movement(frame_, contact.movement);
      if (report.passes == 1) throw SolveError("the frame is a mechanism: " + movement);
      report.unstable = true;
      report.reason = "the frame buckles under its loads: " + movement;
      return false;
    }
    u_ = contact.u;
    const std::vector<double> axial = mean_axials(frame_, *system_, u_);
    const double forces = std::max(system_->load.norm(), (system_->stiffness * u_).norm());
    report.change = relative_change(axial_, axial, forces);
    axial_ = axial;
    return true;
  }

  [[nodiscard]] FrameSolution solution() const { return solution_of(frame_, *system_, u_); }

 private:
  const Frame& frame_;
  std::vector<double> axial_;
  std::vector<bool> closed_;
  std::optional<FrameSystem> system_;
  Eigen::VectorXd u_;
};

}  // namespace

const FrameSolution& FrameResult::value() const& {
  if (!solution) throw SolveError(report.reason);
  return *solution;
}

FrameSolution FrameResult::value() && {
  if (!solution) throw SolveError(report.reason);
  return *std::move(solution);
}

FrameResult solve(const Frame& frame, const FrameOptions& options) {
  require_sound(frame);
  FrameResult result;
  FrameReport& report = result.report;
  Passes passes(frame);
  while (report.passes < options.most_passes) {
    if (!passes.advance(report)) return result;
    report.converged = options.order == FrameOrder::first ||
                       (report.passes > 1 && report.change <= options.tolerance);
    if (!report.converged) continue;
    if (options.order == FrameOrder::first) report.change = 0.0;
    result.solution = passes.solution();
    return result;
  }
  report.reason =
      fmt::format("the axial forces still change by {:.2g} of the largest after {} passes",
                  report.change, report.passes);
  return result;
}

}  // namespace deadshore::solver
