// What holds for every frame: equilibrium, reciprocity, and that only shape counts, not direction.

#include "solver/frame/frame_solution.h"
#include "tests/solver/frame_samples.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace deadshore::solver {
namespace {

/// A leaning two-bay frame with every kind of load, support and spring; sizes vary with the seed.
class RandomFrame : public ::testing::TestWithParam<unsigned> {
 protected:
  RandomFrame() : random_(GetParam()) {
    for (int i = 0; i < 3; ++i) {
      frame.nodes.push_back({2500.0 * i + between(-300.0, 300.0), between(-200.0, 200.0), {}});
      frame.nodes.push_back({2500.0 * i + between(-300.0, 300.0), between(2500.0, 3500.0), {}});
    }
    for (const auto& [from, to] : {std::pair{0, 1}, {3, 2}, {4, 5}, {1, 3}, {3, 5}, {1, 2}}) {
      FrameMember member = testing::sample_member(from, to);
      member.I *= between(0.3, 3.0);
      member.weight = between(0.0, 1.0);
      if (between(0.0, 1.0) > 0.5) member.shear_stiffness = between(1e7, 1e8);
      frame.members.push_back(member);
    }
    frame.members[4].pin_to = true;
    frame.members[5].pin_from = frame.members[5].pin_to = true;
    frame.supports = {fixed_support(0), {2, std::nullopt, 1.5, std::nullopt}};
    frame.springs = {{4, ground, 0.3, -1.0, 20000.0, true, 0.2},
                     {4, ground, 1.0, 0.0, 5000.0, false, 0.0},
                     {1, 5, frame.nodes[5].x - frame.nodes[1].x,
                      frame.nodes[5].y - frame.nodes[1].y, 3000.0, false, 0.1}};
    frame.rotation_springs = {{4, ground, 1e9}, {2, 4, 1e9}};
    add_loads();
  }

  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }

  void add_loads() {
    for (int node = 0; node < 6; ++node) {
      frame.node_loads.push_back(
          {node, between(-5e3, 5e3), between(-3e4, 0.0), between(-5e6, 5e6)});
    }
    for (int member = 0; member < 6; ++member) {
      const double length = member_length(frame, member);
      frame.line_loads.push_back({member, between(0.0, 0.3) * length, between(0.5, 1.0) * length,
                                  between(-5.0, 5.0), between(-9.0, 0.0), between(-5.0, 5.0),
                                  between(-9.0, 0.0)});
      frame.point_loads.push_back({member, between(0.0, 1.0) * length, between(-5e3, 5e3),
                                   between(-5e3, 5e3), between(-2e6, 2e6)});
    }
  }

  Frame frame;

 private:
  std::mt19937 random_;
};
INSTANTIATE_TEST_SUITE_P(Seeds, RandomFrame, ::testing::Range(1U, 13U));

double size_of_loads(const Frame& frame) {
  double size = 0.0;
  for (const FrameNodeLoad& load : frame.node_loads) size += std::hypot(load.x, load.y);
  return size;
}

TEST_P(RandomFrame, ReactionsBalanceTheLoads) {
  const FrameSolution solution = solve(frame).value();
  const testing::Unbalance left = testing::unbalance(frame, solution);
  const double size = size_of_loads(frame);
  EXPECT_NEAR(left.x, 0.0, 1e-10 * size);
  EXPECT_NEAR(left.y, 0.0, 1e-10 * size);
  EXPECT_NEAR(left.moment, 0.0, 1e-10 * size * 5000.0);
}

TEST_P(RandomFrame, ForcesBalanceInSecondOrderToo) {
  const testing::Unbalance left = testing::unbalance(frame, testing::second_order(frame));
  EXPECT_NEAR(left.x, 0.0, 1e-9 * size_of_loads(frame));
  EXPECT_NEAR(left.y, 0.0, 1e-9 * size_of_loads(frame));
}

TEST_P(RandomFrame, MembersMoveWithTheirNodes) {
  const FrameSolution solution = testing::second_order(frame);
  for (std::size_t i = 0; i < frame.members.size(); ++i) {
    const SectionState end = section(solution.members[i], solution.members[i].beam.length);
    const NodeMovement& node = solution.nodes[static_cast<std::size_t>(frame.members[i].to)];
    EXPECT_NEAR(end.x, node.x, 1e-9);
    EXPECT_NEAR(end.y, node.y, 1e-9);
  }
}

TEST_P(RandomFrame, FlexibilityIsSymmetric) {
  const std::vector<LoadPattern> patterns = {
      NodePattern{1, 1.0, 0.0, 0.0}, NodePattern{3, 0.0, 0.0, 1.0}, NodePattern{5, 0.6, -0.8, 0.0},
      StretchPattern{3, 300.0, 900.0, 0.0, -1.0}, StretchPattern{0, 200.0, 1500.0, 1.0, 0.0}};
  for (const FrameOrder order : {FrameOrder::first, FrameOrder::second}) {
    const FrameSolution solution = solve(frame, {.order = order}).value();
    const Eigen::MatrixXd F = flexibility(frame, solution, patterns);
    const Eigen::VectorXd size = F.diagonal().cwiseSqrt();
    for (Eigen::Index i = 0; i < F.rows(); ++i)
      for (Eigen::Index j = 0; j < i; ++j)
        EXPECT_NEAR(F(i, j), F(j, i), 1e-9 * size(i) * size(j)) << i << ' ' << j;
  }
}

/// The frame turned by `angle`, loads and supports with it; weights become line loads, supports
/// stiff springs that can lie at any angle.
Frame turned(const Frame& frame, double angle) {
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  const auto turn = [&](double& x, double& y) {
    const double old_x = x;
    x = c * x - s * y;
    y = s * old_x + c * y;
  };
  Frame result = frame;
  for (int i = 0; i < static_cast<int>(frame.members.size()); ++i) {
    FrameMember& member = result.members[static_cast<std::size_t>(i)];
    result.line_loads.push_back(uniform_load(frame, i, 0.0, -member.weight));
    member.weight = 0.0;
  }
  result.supports = {fixed_support(0)};
  result.springs.push_back({2, ground, 0.0, -1.0, 1e5, false, 0.3});
  for (FrameNode& node : result.nodes) turn(node.x, node.y);
  for (FrameSpring& spring : result.springs) turn(spring.towards_x, spring.towards_y);
  for (FrameNodeLoad& load : result.node_loads) turn(load.x, load.y);
  for (FramePointLoad& load : result.point_loads) turn(load.x, load.y);
  for (FrameLineLoad& load : result.line_loads) {
    turn(load.x_at_from, load.y_at_from);
    turn(load.x_at_to, load.y_at_to);
  }
  return result;
}

TEST_P(RandomFrame, TurningTheFrameLeavesItsMembersForcesAsTheyAre) {
  const FrameSolution straight = testing::second_order(turned(frame, 0.0));
  for (const double angle : {0.3, 2.0, -1.1}) {
    const FrameSolution other = testing::second_order(turned(frame, angle));
    for (std::size_t i = 0; i < frame.members.size(); ++i) {
      for (const double share : {0.0, 0.4, 1.0}) {
        const double at = share * straight.members[i].beam.length;
        const SectionState due = section(straight.members[i], at, SectionSide::before);
        const SectionState found = section(other.members[i], at, SectionSide::before);
        EXPECT_NEAR(found.axial, due.axial, 1e-9 * 1e5);
        EXPECT_NEAR(found.moment, due.moment, 1e-9 * 1e8);
        EXPECT_NEAR(found.shear, due.shear, 1e-9 * 1e5);
      }
    }
  }
}

TEST_P(RandomFrame, ReversedMembersGiveTheSameReactions) {
  Frame reversed = frame;
  for (int i = 0; i < static_cast<int>(frame.members.size()); ++i) {
    FrameMember& member = reversed.members[static_cast<std::size_t>(i)];
    std::swap(member.from, member.to);
    std::swap(member.pin_from, member.pin_to);
  }
  for (FrameLineLoad& load : reversed.line_loads) {
    const double length = member_length(frame, load.member);
    load = {load.member,  length - load.to, length - load.from, load.x_at_to,
            load.y_at_to, load.x_at_from,   load.y_at_from};
  }
  for (FramePointLoad& load : reversed.point_loads)
    load.at = member_length(frame, load.member) - load.at;
  const FrameSolution due = testing::second_order(frame);
  const FrameSolution found = testing::second_order(reversed);
  EXPECT_NEAR(found.reactions[0].moment, due.reactions[0].moment, 1e-9 * 1e8);
  EXPECT_NEAR(found.reactions[1].y, due.reactions[1].y, 1e-9 * 1e5);
}

}  // namespace
}  // namespace deadshore::solver
