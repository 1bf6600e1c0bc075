#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace deadshore::io {

/// What sets part of a text apart.
enum class Mark { strong, em, code, sub, sup, link };

struct MarkedRange {
  std::size_t from = 0;  ///< bytes
  std::size_t to = 0;
  Mark mark = Mark::strong;
  std::string target;  ///< of a link: "#id" inside the document, or an address
};

/// Text in UTF-8, white space already closed up, with the ranges that are set apart.
struct RichText {
  std::string text;
  std::vector<MarkedRange> ranges;
};

}  // namespace deadshore::io
