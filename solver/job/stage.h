#pragma once

#include "solver/job/ids.h"

#include <string>
#include <variant>
#include <vector>

/// The order of work as data.
namespace deadshore::solver {

struct Job;

/// One thing that is done to the wall. What it is done to stands in `Operation::target`.
enum class Act {
  fit,       ///< needle: packed tight under the soffit, stress-free, or with its slack left
  preload,   ///< needle: jacked to its preload against the wall as it stands
  release,   ///< needle: taken out
  remove,    ///< masonry: the cut, the pockets, or a lintel in the cut
  place,     ///< padstones or beam
  pack,      ///< beam: dry packing between beam and soffit, stress-free, hardening from that day
  tighten,   ///< dead shore: takes its share of the line load that it carries off the wall
  slacken,   ///< dead shore: gives it back
  load_on,   ///< line or point load
  load_off,  ///< the same
};

/// "fit", "load on" and so on, as written in a job file.
[[nodiscard]] const char* to_string(Act act);

/// What a wall has one of: the masonry of the cut, the pockets for the beam's ends, the padstones
/// (both) and the permanent beam.
enum class WorkPart { cut, pockets, padstones, beam };

/// "cut", "pockets", "padstones", "beam", as written in a job file.
[[nodiscard]] const char* to_string(WorkPart part);

/// What an operation is done to.
using Target = std::variant<WorkPart, NeedleId, ShoreId, LineLoadId, PointLoadId, LintelId>;

/// A load as a target.
[[nodiscard]] Target target_of(LoadId load);

/// One step of the work: something done to something.
struct Operation {
  Act act = Act::fit;  ///< what is done
  Target target;       ///< to what

  bool operator==(const Operation&) const = default;
};

/// What a target is called: its name in the job, or of a part of the works its word.
/// \pre the job has it
[[nodiscard]] std::string name_of(const Job& job, const Target& target);

/// An operation as it is written in a job file: "fit N1".
/// \pre the job has what it is done to
[[nodiscard]] std::string in_words(const Job& job, const Operation& operation);

/// What is done between two states of rest; the wall is analysed after it.
struct Stage {
  std::string name;
  double day = 0.0;  ///< on which it is done, from the start of the work; never falls
  std::vector<Operation> operations;
};

/// Whether an operation is among those of a stage.
[[nodiscard]] bool does(const Stage& stage, const Operation& operation);

}  // namespace deadshore::solver
