#pragma once

#include "io/pdf/blocks.h"
#include "io/pdf/markup.h"

namespace deadshore::io {

/// A <table> as a grid.
[[nodiscard]] GridBlock grid_of(const pugi::xml_node& table, const MarkupRules& rules);

}  // namespace deadshore::io
