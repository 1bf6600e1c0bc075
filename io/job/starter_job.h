#pragma once

#include <string>

namespace deadshore::io {

/// A small invented job with a comment beside each key, to change into one's own: it is accepted,
/// and it runs. Keys, what they mean and what else there is come from the schema.
[[nodiscard]] std::string starter_job();

}  // namespace deadshore::io
