#pragma once

#include "io/job/schema_parts.h"

#include <array>

/// The keys of what heads the design note.
namespace deadshore::io::schema_parts {

constexpr SchemaKey note_text(std::string_view name, std::string_view example,
                              std::string_view meaning) {
  return {.name = name, .kind = text, .example = example, .meaning = meaning};
}

inline constexpr std::array title_block_keys{
    note_text("project", "Mill cottage, kitchen", "The house or the site."),
    note_text("client", "The owners of Mill cottage", "Whom the work is for."),
    note_text("reference", "TW-01", "The number of this calculation."),
    note_text("revision", "A", "Which issue of it this is."),
    note_text("prepared_by", "A. Builder",
              "Who made it; blank, to be signed by hand, if left out."),
    note_text("checked_by", "C. Engineer", "Who checked it; blank, to be signed, if left out."),
    note_text("date", "2 March 2026",
              "When it was signed, in your own words; blank, to be filled in, if left out."),
};

}  // namespace deadshore::io::schema_parts
