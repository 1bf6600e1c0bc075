#pragma once

#include "io/pdf/blocks.h"
#include "io/pdf/note_pdf.h"

#include <string_view>

namespace deadshore::io {

/// Reads the page of the design note. \throws as `note_pdf` for what it cannot read.
[[nodiscard]] NoteDocument read_note(std::string_view note_xhtml, UnknownMarkup unknown);

}  // namespace deadshore::io
