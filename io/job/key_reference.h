#pragma once

#include "io/job/schema.h"

#include <string>
#include <string_view>

namespace deadshore::io {

/// One table of the job file for a terminal of 80 columns: its header, what it is, and for each key
/// its unit or kind, its default, what it means, its range and an example.
[[nodiscard]] std::string reference_of(const SchemaTable& table);

/// The table with this name and those inside it; all tables where it is empty, the file's top where
/// it is "top". Throws std::invalid_argument, with the nearest known name, where there is none.
[[nodiscard]] std::string key_reference(std::string_view name);

}  // namespace deadshore::io
