#pragma once

namespace deadshore::io {

/// What the program's exit status means.
enum class ExitCode {
  done = 0,
  bad_input = 1,     ///< a bad job file or option, or a file that cannot be read or written
  untrusted = 2,     ///< the analysis could not be done or could not be trusted
  check_failed = 3,  ///< only with --strict: a check failed or is not verified, masonry is loose,
                     ///< or the wall does not stand in some stage
};

}  // namespace deadshore::io
