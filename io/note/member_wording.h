#pragma once

#include "solver/job/needle_frame.h"

#include <string>

/// Members and what they stand on, as the note calls them.
namespace deadshore::io {

/// "UC 152x152x23 in S275, class 3 in bending", "timber 100 \u00d7 150 mm, C24".
[[nodiscard]] std::string made_of(const solver::NeedleMember& member);

/// "B35, 2000 to 3500 mm long, tubes 60.3 \u00d7 3.2 and 48.3 \u00d7 3.2 mm".
[[nodiscard]] std::string made_of(const solver::Prop& prop);

/// "level with the base", "150 mm below the base".
[[nodiscard]] std::string level_words(double level);

/// The ground with its presumed bearing, or the suspended floor by its name.
[[nodiscard]] std::string ground_words(const solver::Footing& footing);

}  // namespace deadshore::io
