#pragma once

#include "solver/result/results.h"

#include <optional>
#include <string>
#include <vector>

namespace deadshore::solver {

/// The largest load that any method and stage gives one needle.
struct EnvelopedLoad {
  NeedleId needle = {};
  double load = 0.0;  ///< N, characteristic (load factor 1.0)
  /// "hand", "uncracked" or "cracked", the last two also with what was changed to find it, as
  /// "uncracked, if no needle gave"
  std::string method;
  std::optional<StageId> stage;  ///< in which it was found; the one compared for the hand method
};

/// Whether every analysis of every stage finds equilibrium.
[[nodiscard]] bool stands(const JobResult& result);

/// The stage to compare the hand method with: the first in which the cut is out and no beam is in,
/// or where there is none such the last without a beam. Null where there is no stage.
[[nodiscard]] const StageResult* compared_stage(const JobResult& result);

/// Name of a stage; empty where there is none.
[[nodiscard]] std::string name_of(const JobResult& result, std::optional<StageId> stage);

/// The load to design each needle for: the largest of the hand method with needles set out a little
/// off, of every analysis of every stage, of needles that do not give, and of whatever is not known
/// well (`result.sensitivities`), in the job's order. Stiffness is the least known input. Empty
/// where the wall does not stand: it then gives no load to design for.
[[nodiscard]] std::vector<EnvelopedLoad> envelope_of(const JobResult& result);

/// The entry with the largest load; null where there is none.
[[nodiscard]] const EnvelopedLoad* worst_of(const std::vector<EnvelopedLoad>& envelope);

/// Everything that acts downwards, N: as the analyses were loaded, or by the hand method where
/// there is no analysis.
[[nodiscard]] double load_total_of(const JobResult& result);

}  // namespace deadshore::solver
