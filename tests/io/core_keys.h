#pragma once

#include <fstream>
#include <sstream>
#include <string>

namespace deadshore::io {

/// The text of a file in tests/io/data.
inline std::string test_data(const std::string& name) {
  std::ifstream file(DEADSHORE_SOURCE_DIR "/tests/io/data/" + name, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

/// An invented job with the keys that must not change.
inline std::string core_keys() {
  return test_data("core_keys.toml");
}

/// An invented job whose needles stand on a frame.
inline std::string framed_keys() {
  return test_data("framed_keys.toml");
}

/// `text` with the first `old_part` made `new_part`; empty where there is none.
inline std::string with(std::string text, const std::string& old_part,
                        const std::string& new_part) {
  const std::size_t at = text.find(old_part);
  return at == std::string::npos ? "" : text.replace(at, old_part.size(), new_part);
}

}  // namespace deadshore::io
