#pragma once

#include <string>
#include <vector>

/// The order of work as data.
namespace deadshore::solver {

/// One thing that is done to the wall. What it is done to stands in `Operation::what`.
enum class Act {
  fit,       ///< needle: packed tight under the soffit, stress-free, or with its slack left
  preload,   ///< needle: jacked to its preload against the wall as it stands
  release,   ///< needle: taken out
  remove,    ///< region of masonry: "cut", "pockets", or the name of a lintel in the cut
  place,     ///< "padstones" or "beam"
  pack,      ///< "beam": dry packing between beam and soffit, stress-free, hardening from that day
  tighten,   ///< dead shore: takes its share of the line load that it carries off the wall
  slacken,   ///< dead shore: gives it back
  load_on,   ///< line or point load, by name
  load_off,  ///< the same
};

/// "fit", "load on" and so on, as written in a job file.
[[nodiscard]] const char* to_string(Act act);

struct Operation {
  Act act = Act::fit;
  std::string what;

  bool operator==(const Operation&) const = default;
};

/// "fit N1"
[[nodiscard]] std::string in_words(const Operation& operation);

/// What is done between two states of rest; the wall is analysed after it.
struct Stage {
  std::string name;
  double day = 0.0;  ///< on which it is done, from the start of the work; never falls
  std::vector<Operation> operations;
};

/// Names of the two regions that a permanent beam needs, beside "cut".
inline constexpr const char* cut_region = "cut";
inline constexpr const char* pockets_region = "pockets";
inline constexpr const char* padstones_part = "padstones";
inline constexpr const char* beam_part = "beam";

}  // namespace deadshore::solver
