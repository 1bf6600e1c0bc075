#pragma once

#include "io/job/schema.h"
#include "io/tables/member_tables.h"

#include <algorithm>
#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// Rows of tables by their names. `name_of` gives a row's name.
namespace deadshore::io {

/// A name without what people write in different ways: case and spaces.
[[nodiscard]] std::string bare_name(std::string_view name);

/// Whether two names are the same but for case and spaces.
[[nodiscard]] bool is_same_name(std::string_view a, std::string_view b);

/// The row with this name; throws UnknownMember with the nearest, `kind` in words.
template <class Row, class NameOf>
const Row& find_row(const std::vector<Row>& rows, std::string_view name, const std::string& kind,
                    NameOf name_of) {
  std::vector<std::string> bare_names;
  bare_names.reserve(rows.size());
  for (const Row& row : rows) bare_names.push_back(bare_name(std::invoke(name_of, row)));
  const std::string wanted = bare_name(name);
  const auto found = std::find(bare_names.begin(), bare_names.end(), wanted);
  if (found != bare_names.end()) return rows[static_cast<std::size_t>(found - bare_names.begin())];
  if (rows.empty()) throw UnknownMember(kind, std::string(name), "");
  const std::vector<std::string_view> known(bare_names.begin(), bare_names.end());
  const auto nearest = std::find(known.begin(), known.end(), nearest_name(wanted, known));
  throw UnknownMember(
      kind, std::string(name),
      std::invoke(name_of, rows[static_cast<std::size_t>(nearest - known.begin())]));
}

/// Adds a row, or puts it in the place of the one with its name.
template <class Row, class NameOf>
void put_row(std::vector<Row>& rows, Row row, NameOf name_of) {
  const auto known = std::ranges::find_if(rows, [&](const Row& other) {
    return is_same_name(std::invoke(name_of, other), std::invoke(name_of, row));
  });
  if (known == rows.end())
    rows.push_back(std::move(row));
  else
    *known = std::move(row);
}

}  // namespace deadshore::io
