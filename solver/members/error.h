#pragma once

#include <stdexcept>
#include <string>

namespace deadshore::solver {

/// A member that cannot be used as asked; `what()` is one line: member, what was found, what is
/// due.
class MemberError : public std::runtime_error {
 public:
  /// \param member what it is called, such as "B35"
  /// \param found what it was asked to do: "an extension of 4.000 m"
  /// \param due what would have done, a clause of its own: "2.00 m to 3.50 m is due"
  MemberError(std::string member, std::string found, std::string due)
      : std::runtime_error(member + ": found " + found + "; " + due),
        member_(std::move(member)),
        found_(std::move(found)),
        due_(std::move(due)) {}

  [[nodiscard]] const std::string& member() const { return member_; }
  [[nodiscard]] const std::string& found() const { return found_; }
  [[nodiscard]] const std::string& due() const { return due_; }

 private:
  std::string member_;
  std::string found_;
  std::string due_;
};

}  // namespace deadshore::solver
