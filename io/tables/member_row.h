#pragma once

#include <toml++/toml.h>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace deadshore::io {

/// The groups that a file of tables may hold. Each reader takes its own and leaves the others, so
/// that one file may have all of them.
[[nodiscard]] std::vector<std::string_view> table_groups();

/// One table of a file of members: a group or one of its rows. Every getter throws InputError, with
/// file and line, where the value is not what is due.
class MemberRow {
 public:
  /// `table` must outlive this; `path` is its place in the file, such as "steel_group[0]". Throws
  /// InputError for a key that is not one of `known`.
  MemberRow(const toml::table& table, std::string file, std::string path,
            const std::vector<std::string_view>& known);

  [[nodiscard]] bool has(std::string_view key) const { return table_.contains(key); }

  /// A text that is not empty, of characters that print, at most 500 bytes.
  [[nodiscard]] std::string text(std::string_view key) const;
  /// One of `choices`, by its number.
  [[nodiscard]] std::size_t choice(std::string_view key,
                                   const std::vector<std::string_view>& choices) const;
  /// A finite number above 0.
  [[nodiscard]] double number(std::string_view key) const;
  /// A list of finite numbers above 0, `count` long where that is given.
  [[nodiscard]] std::vector<double> numbers(std::string_view key,
                                            std::optional<std::size_t> count = {}) const;
  /// false where the key is missing.
  [[nodiscard]] bool flag(std::string_view key) const;
  [[nodiscard]] MemberRow row(std::string_view key,
                              const std::vector<std::string_view>& known) const;
  /// A list of tables, at least one.
  [[nodiscard]] std::vector<MemberRow> rows(std::string_view key,
                                            const std::vector<std::string_view>& known) const;

  /// Throws InputError for `key`, or for the whole table where it is empty.
  [[noreturn]] void refuse(std::string_view key, const std::string& found,
                           const std::string& due) const;

 private:
  std::string path_of(std::string_view key) const;
  const toml::node& node(std::string_view key, std::string_view due) const;

  const toml::table& table_;
  std::string file_;
  std::string path_;
};

}  // namespace deadshore::io
