#pragma once

#include "solver/job/job.h"
#include "solver/job/supports.h"
#include "solver/panel/panel_result.h"

#include <optional>
#include <vector>

namespace deadshore::solver {

/// Supports among which a load is shared: those under the wall's soffit and its joists, the bases
/// of piers and of the masonry to be cut, the ends of the permanent beam, and the ends of the wall.
enum class SupportGroup { under_wall, bases, beam_ends, wall_ends };
/// The group that supports of a kind belong to.
[[nodiscard]] SupportGroup group_of(SupportKind kind);

/// What one support carries.
struct SupportReaction {
  SupportId support;
  double x = 0.0;                    ///< its middle along the wall, mm
  double z = 0.0;                    ///< through the wall from the middle of its thickness, mm
  double force = 0.0;                ///< upwards on what it carries, N
  std::optional<double> mesh_error;  ///< plus or minus, N, for the size of the elements alone

  [[nodiscard]] SupportGroup group() const { return group_of(support.kind); }
};

/// The vertical reactions of all supports of an analysis; everything that is written or drawn reads
/// them from here. In this order: the needles as in the job, in the wall or not; the piers; the
/// base under the cut where it carries something; the joists over dead shores that are tight; the
/// ends of the beam once it is placed. What held ends of the wall push sideways is not among them:
/// see `PanelResult::thrust_left` and `thrust_right`.
[[nodiscard]] std::vector<SupportReaction> reactions_of(const Job& job,
                                                        const PanelResult& analysis);

/// The reaction of one support; null where the analysis does not have it.
[[nodiscard]] const SupportReaction* find_reaction(const std::vector<SupportReaction>& reactions,
                                                   SupportId support);

/// The middle of a support along the wall, mm.
/// \pre the job has the support
[[nodiscard]] double place_of(const Job& job, SupportId support);

}  // namespace deadshore::solver
