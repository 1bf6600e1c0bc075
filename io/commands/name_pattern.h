#pragma once

#include "io/tables/rows_by_name.h"

#include <fmt/format.h>

#include <fnmatch.h>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace deadshore::io {

/// The rows whose name holds `pattern`, whatever its case and spaces; * and ? stand for any
/// letters. `name_of` gives a row's name, `kind` is in words. Throws UnknownMember, with the
/// nearest known name, where there is none.
template <class Row, class NameOf>
std::vector<const Row*> matching(const std::vector<Row>& rows, std::string_view pattern,
                                 const std::string& kind, NameOf name_of) {
  const std::string wanted = fmt::format("*{}*", bare_name(pattern));
  std::vector<const Row*> found;
  std::vector<std::string_view> known;
  for (const Row& row : rows) {
    const std::string& name = std::invoke(name_of, row);
    if (fnmatch(wanted.c_str(), bare_name(name).c_str(), 0) == 0) found.push_back(&row);
    known.push_back(name);
  }
  if (found.empty()) {
    throw UnknownMember(kind, std::string(pattern),
                        known.empty() ? "" : std::string(nearest_name(pattern, known)));
  }
  return found;
}

}  // namespace deadshore::io
