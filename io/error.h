#pragma once

#include <filesystem>
#include <stdexcept>
#include <string>

namespace deadshore::io {

/// Something in a job file that cannot be used: where it is, what was found, what was due.
///
/// `what()` is one printable line, for example
/// `yard.toml:31: needle[0].x: found "1.4 kN", a force; a length is due, such as "1.2 m"`.
class InputError : public std::runtime_error {
 public:
  /// `line` counts from 1; `key` is a path in the job, entries counted from 0, and may be empty for
  /// the file as a whole. `due` is a clause of its own: it says what to write instead.
  InputError(std::string file, int line, std::string key, std::string found, std::string due);

  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] int line() const { return line_; }
  [[nodiscard]] const std::string& key() const { return key_; }
  [[nodiscard]] const std::string& found() const { return found_; }
  [[nodiscard]] const std::string& due() const { return due_; }

 private:
  std::string file_;
  int line_;
  std::string key_;
  std::string found_;
  std::string due_;
};

/// A file that cannot be read or written; `what()` is one line: path and reason.
class FileError : public std::runtime_error {
 public:
  /// `reason` in words, such as the system's own "Permission denied".
  FileError(std::filesystem::path path, const std::string& reason);

  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

/// `text` with every control character turned into a space.
[[nodiscard]] std::string one_line(std::string text);

/// The same, short enough to quote: what is past 80 bytes becomes "...".
[[nodiscard]] std::string printable(std::string text);

}  // namespace deadshore::io
