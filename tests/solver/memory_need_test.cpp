#include "solver/study/memory_need.h"

#include "tests/solver/invented_wall.h"

#include <gtest/gtest.h>

namespace deadshore::solver {
namespace {

double need_at(Job job, double size) {
  job.analysis.mesh_size = size;
  return memory_needed(job);
}

TEST(MemoryNeed, GrowsLittleFasterThanTheNumberOfElements) {
  const Job job = invented_wall();
  // Elements so small that what the program itself takes is little beside.
  const double growth = need_at(job, 1.0) / need_at(job, 2.0);
  EXPECT_GT(growth, 4.0);
  EXPECT_LT(growth, 5.0);
}

TEST(MemoryNeed, IsMoreForEightNodesAndForStages) {
  const Job job = invented_wall();
  Job eight_nodes = job;
  eight_nodes.analysis.element = mesh::QuadOrder::eight_node;
  EXPECT_GT(need_at(eight_nodes, 25.0), 2.0 * need_at(job, 25.0));
  Job staged = job;
  staged.analysis.sequence = Sequence::staged;
  EXPECT_GT(need_at(staged, 25.0), need_at(job, 25.0));
}

TEST(MemoryNeed, NamesTheSmallestWholeMillimetreThatFits) {
  const Job job = invented_wall();
  const double enough = need_at(job, 40.0);
  EXPECT_EQ(smallest_mesh_within(job, enough), 40.0);
  EXPECT_EQ(smallest_mesh_within(job, enough - 1.0), 41.0);
}

TEST(MemoryNeed, NothingFitsIntoLessThanTheProgramTakes) {
  EXPECT_EQ(smallest_mesh_within(invented_wall(), 1e6), 0.0);
}

}  // namespace
}  // namespace deadshore::solver
