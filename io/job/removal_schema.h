#pragma once

#include "io/job/schema_parts.h"

#include <array>

/// The keys of how what comes out is taken apart.
namespace deadshore::io::schema_parts {

// Defaults: common practice, no source; those of solver/site/removed_masonry.h.
inline constexpr std::array removal_keys{
    optional("course_height", length, "mm", "75 mm", "75 mm", "10 mm or more",
             "Of a brick and its joint."),
    optional("strip_width", length, "mm", "500 mm", "500 mm", "50 mm or more",
             "Along the wall, of what is taken out in one go."),
    optional("one_person_lift", force, "N", "250 N", "250 N", "1 N or more",
             "What one person lifts; local rules and the person decide."),
    optional("two_person_lift", force, "N", "500 N", "500 N", "what one person lifts or more",
             "What two people lift together; the same."),
    SchemaKey{.name = "bulking",
              .kind = number,
              .example = "1.5",
              .fallback = "1.5",
              .range = "1 or more",
              .meaning = "Room that broken masonry takes over what it took in the wall."},
};

}  // namespace deadshore::io::schema_parts
