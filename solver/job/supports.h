#pragma once

#include "solver/job/ids.h"

#include <compare>
#include <cstddef>
#include <optional>
#include <string>

/// What holds the wall up, and the permanent beam.
namespace deadshore::solver {

struct Job;

/// What kind of support.
enum class SupportKind {
  needle,
  left_pier,       ///< the base left of the cut
  right_pier,      ///< the base right of the cut
  base_under_cut,  ///< the base of the masonry to be cut, until it is out
  joists,          ///< the joist ends over a dead shore
  beam_left_end,   ///< of the permanent beam
  beam_right_end,
  left_end,   ///< the wall's left end where it is held: pushes sideways alone
  right_end,  ///< the wall's right end, likewise
};

/// Which support: `index` is the place of the needle or the dead shore in the job, else 0.
struct SupportId {
  SupportKind kind = SupportKind::needle;
  std::size_t index = 0;

  auto operator<=>(const SupportId&) const = default;
};
/// A needle as a support.
[[nodiscard]] constexpr SupportId support_of(NeedleId needle) {
  return {SupportKind::needle, index_of(needle)};
}
/// The joist ends over a dead shore as a support.
[[nodiscard]] constexpr SupportId support_of(ShoreId shore) {
  return {SupportKind::joists, index_of(shore)};
}

/// Supports of which a job has one.
namespace supports {
inline constexpr SupportId left_pier{SupportKind::left_pier};
inline constexpr SupportId right_pier{SupportKind::right_pier};
inline constexpr SupportId base_under_cut{SupportKind::base_under_cut};
inline constexpr SupportId beam_left_end{SupportKind::beam_left_end};
inline constexpr SupportId beam_right_end{SupportKind::beam_right_end};
inline constexpr SupportId left_end{SupportKind::left_end};
inline constexpr SupportId right_end{SupportKind::right_end};
}  // namespace supports

/// What a support is called wherever it is printed: a needle by its own name, "left pier", "right
/// pier", "base under the cut", "joists on SHORE", "beam left end", "beam right end", "left end",
/// "right end". No two supports of a job are called the same: a needle that has the words of
/// another support for a name gets "needle " before them.
/// \pre the job has the support
[[nodiscard]] std::string label_of(const Job& job, SupportId support);

/// The same; "no needle" where the hand method gives something to no support.
[[nodiscard]] std::string label_of(const Job& job, std::optional<SupportId> support);

}  // namespace deadshore::solver
