#include "io/tables/rows_by_name.h"

#include <cctype>

namespace deadshore::io {

std::string bare_name(std::string_view name) {
  std::string bare;
  for (const char c : name) {
    if (c != ' ') bare += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return bare;
}

bool is_same_name(std::string_view a, std::string_view b) {
  const auto first_differs = [](std::string_view x, std::string_view y) {
    return !x.empty() && !y.empty() && x.front() != ' ' && y.front() != ' ' &&
           std::tolower(static_cast<unsigned char>(x.front())) !=
               std::tolower(static_cast<unsigned char>(y.front()));
  };
  return !first_differs(a, b) && bare_name(a) == bare_name(b);
}

}  // namespace deadshore::io
