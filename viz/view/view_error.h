#pragma once

#include <filesystem>
#include <stdexcept>
#include <string>

namespace deadshore::viz {

/// What keeps a folder of results from being shown: which file, and why. `what()` is one line.
class ViewError : public std::runtime_error {
 public:
  ViewError(std::filesystem::path file, const std::string& reason);

  [[nodiscard]] const std::filesystem::path& file() const { return file_; }

 private:
  std::filesystem::path file_;
};

}  // namespace deadshore::viz
