#pragma once

#include "io/note/html.h"
#include "viz/figures.h"

#include <span>
#include <string_view>
#include <vector>

namespace deadshore::io {

/// Hands out a note's figures to its chapters, each once, numbered in the order in which they are
/// taken: so take them in the order of the page.
class FigureShelf {
 public:
  /// `figures` must outlive the shelf.
  explicit FigureShelf(std::span<const viz::Figure> figures);

  /// The figure of this name; empty where there is none or it was taken before.
  [[nodiscard]] Html take(std::string_view name);

  /// Every figure left whose name begins so.
  [[nodiscard]] Html take_all(std::string_view beginning);

 private:
  Html placed(std::size_t index);

  std::span<const viz::Figure> figures_;
  std::vector<bool> taken_;
  int count_ = 0;  ///< of those taken
};

}  // namespace deadshore::io
