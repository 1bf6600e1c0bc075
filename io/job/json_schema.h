#pragma once

#include <string>

namespace deadshore::io {

/// The job file as a JSON schema, draft 2020-12, for editors that complete and check TOML by one.
/// It knows keys, kinds, choices, simple ranges and how a quantity is written; `deadshore check`
/// knows dimensions and what makes sense together.
[[nodiscard]] std::string job_json_schema();

}  // namespace deadshore::io
