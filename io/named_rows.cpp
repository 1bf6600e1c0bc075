#include "io/named_rows.h"

#include <cctype>

namespace deadshore::io {

std::string bare_name(std::string_view name) {
  std::string bare;
  for (const char c : name) {
    if (c != ' ') bare += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return bare;
}

}  // namespace deadshore::io
