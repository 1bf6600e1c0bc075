#pragma once

#include <string_view>

namespace deadshore::io {

/// The text of stage_viewer.js, built in.
[[nodiscard]] std::string_view viewer_script();

}  // namespace deadshore::io
