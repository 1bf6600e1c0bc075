#include "solver/study/memory_need.h"

#include "solver/job/usual_stages.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace deadshore::solver {

namespace {

constexpr double mib = 1024.0 * 1024.0;

// Measured as peak memory, 64-bit, one thread; see the header.
constexpr double program = 75.0 * mib;
constexpr double for_stages = 20.0 * mib;   // figures and limit analysis
constexpr double per_element_kept = 100.0;  // bytes for each analysis
constexpr double per_node_kept = 260.0;

/// What the factor, the matrix and its pattern take for each unknown, bytes.
double working_bytes(double unknowns) {
  constexpr double least = 1600.0;
  return std::max(least, 160.0 * std::log2(unknowns) - 570.0);
}

double area_of(const Job& job, bool with_cut) {
  double area = 0.0;
  const std::vector<mesh::Point>& top = job.wall.top;
  for (std::size_t i = 1; i < top.size(); ++i)
    area += 0.5 * (top[i].y + top[i - 1].y) * (top[i].x - top[i - 1].x);
  if (!with_cut) area -= job.wall.cut.span().length() * job.wall.cut.soffit;
  return area;
}

struct Amounts {
  double area = 0.0;      ///< mm2
  double length = 0.0;    ///< mm
  double analyses = 0.0;  ///< kept until the end
  double nodes_per_element = 0.0;
  double fixed = 0.0;  ///< bytes
};

Amounts amounts_of(const Job& job) {
  const bool staged = job.analysis.sequence == Sequence::staged;
  const std::size_t stages = analysed_stages(job).size();
  return {area_of(job, staged), job.wall.length,
          static_cast<double>(stages * std::max<std::size_t>(job.analysis.masonry.size(), 1)),
          job.analysis.element == mesh::QuadOrder::eight_node ? 3.0 : 1.0,
          program + (staged ? for_stages : 0.0)};
}

double memory_at(const Amounts& amounts, double size) {
  constexpr double for_lines = 1.08;  // elements are cut smaller where lines are near each other
  const double elements = for_lines * amounts.area / (size * size) + amounts.length / size + 100.0;
  const double nodes = amounts.nodes_per_element * elements;
  return amounts.fixed + 2.0 * nodes * working_bytes(2.0 * nodes) +
         amounts.analyses * (per_element_kept * elements + per_node_kept * nodes);
}

}  // namespace

double memory_needed(const Job& job) {
  return memory_at(amounts_of(job), job.analysis.mesh_size);
}

double smallest_mesh_within(const Job& job, double memory) {
  const Amounts amounts = amounts_of(job);
  double fits = std::ceil(job.wall.length);
  if (memory_at(amounts, fits) > memory) return 0.0;
  double too_small = 0.0;
  while (fits - too_small > 1.0) {
    const double size = std::floor(0.5 * (fits + too_small));
    (memory_at(amounts, size) <= memory ? fits : too_small) = size;
  }
  return fits;
}

}  // namespace deadshore::solver
