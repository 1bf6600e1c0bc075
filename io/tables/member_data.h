#pragma once

#include <span>
#include <string_view>

namespace deadshore::io {

/// A file of tables that is built into the library.
struct MemberData {
  std::string_view name;  ///< such as "steel_sections.toml"
  std::string_view text;
};

/// The files of members in io/data, as they were when the library was built.
[[nodiscard]] std::span<const MemberData> built_in_member_data();

/// Those of weights and imposed loads.
[[nodiscard]] std::span<const MemberData> built_in_weight_data();

}  // namespace deadshore::io
