#pragma once

#include "mesh/plane.h"
#include "solver/job/job.h"
#include "solver/spread/landing.h"

#include <vector>

/// Upright strips of the wall on which the hand method's integrals are smooth.
namespace deadshore::solver {

/// A stretch of an upright line through the wall that is of one material and over one opening, or
/// over none.
struct ColumnPiece {
  mesh::Interval y;  ///< mm
  int lintel = -1;   ///< number in the job's lintels, or -1 for masonry
  int over = -1;  ///< number of the opening it stands over, or -1 where solid down to its support
};

/// The masonry and lintels on the upright line at `x`, from the base, or over the cut from the
/// soffit, up to the outline.
/// \param openings from `openings_left_by_cut`
[[nodiscard]] std::vector<ColumnPiece> column_at(const Job& job,
                                                 const std::vector<mesh::Opening>& openings,
                                                 double x);

/// The x between which the hand method's integrands are smooth: wherever anything starts, ends,
/// bends or crosses a 45-degree line. Ascending, mm; each place once (mesh::distinct_places).
[[nodiscard]] std::vector<double> strip_edges(const Job& job, const Supports& supports);

/// A Gauss point along the wall.
struct Station {
  double x = 0.0;      ///< mm
  double width = 0.0;  ///< of the wall that it stands for, mm: its weight
};

/// Gauss stations over one strip: exact for polynomials of degree 5; where `curved`, also good to
/// 1e-9 for circular arcs that end at the strip's ends, even uprightly.
[[nodiscard]] std::vector<Station> stations_over(mesh::Interval strip, bool curved);

}  // namespace deadshore::solver
