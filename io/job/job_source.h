#pragma once

#include "io/job/units.h"
#include "solver/job/faults.h"

#include <toml++/toml.h>

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace deadshore::io {

/// Where a job comes from, and on which line each key read so far has its value.
class JobSource {
 public:
  /// `units` must outlive the source.
  JobSource(std::string file, const Units& units) : file_(std::move(file)), units_(units) {}

  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] const Units& units() const { return units_; }

  void remember(const std::string& path, int line) { lines_.insert_or_assign(path, line); }

  /// Says that `path` of a solver::Fault is written at `in_file`: "masonry" at "masonry.brick".
  void place(const std::string& path, const std::string& in_file) {
    places_.insert_or_assign(path, in_file);
  }

  /// The line of `path`, or of the closest table or entry around it; 1 where there is none.
  [[nodiscard]] int line_of(std::string path) const;

  /// Throws InputError for `path` at its line.
  [[noreturn]] void refuse(const std::string& path, const std::string& found,
                           const std::string& due) const;

  /// The same for the first of a job's faults, where the file has what it points at; nothing where
  /// there is none.
  void refuse_first(const std::vector<solver::Fault>& faults) const;

  /// Refuses what is too long, or holds a character that would not show where the text is printed.
  /// \param longest in bytes
  void require_printable(const std::string& path, std::string_view text, std::size_t longest) const;

 private:
  /// Where the file has what a fault's key points at, by the longest part of it that was placed.
  [[nodiscard]] std::string path_in_file(const std::string& key) const;

  std::string file_;
  const Units& units_;
  std::map<std::string, int> lines_;
  std::map<std::string, std::string> places_;
};

/// The line of a node in its file, from 1.
[[nodiscard]] int line_of_node(const toml::node& node);

}  // namespace deadshore::io
