#pragma once

#include "viz/view/answers.h"
#include "viz/view/shown_result.h"

#include <string>
#include <variant>
#include <vector>

/// What was picked, kept from stage to stage, and what is said of it.
namespace deadshore::viz {

struct PickedNothing {};
/// A place on the wall as built, mm.
struct PickedWall {
  double x = 0.0;
  double y = 0.0;
};
/// By its name in supports.vtp.
struct PickedSupport {
  std::string name;
};
/// By its name in needles.vtp.
struct PickedProp {
  std::string name;
};
struct PickedBeam {};

using Picked = std::variant<PickedNothing, PickedWall, PickedSupport, PickedProp, PickedBeam>;

/// A support, prop or "beam" by its name, or a place as "X,Y" in mm.
/// \throws std::invalid_argument saying what there is to pick
[[nodiscard]] Picked picked_by_name(const ShownResult& result, const std::string& text);

/// All that is known of it at a stage under an analysis; the first line is its name.
[[nodiscard]] std::vector<std::string> picked_text(const Picked& picked, const ShownResult& result,
                                                   std::size_t stage, std::size_t analysis);

/// The needle that a line of needles.vtp belongs to: "N1" of "N1 outer prop". Empty if none.
[[nodiscard]] std::string needle_of(const ShownResult& result, const std::string& part);

}  // namespace deadshore::viz
