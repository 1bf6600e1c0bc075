#pragma once

#include "io/document/block.h"

#include <span>
#include <string_view>
#include <vector>

namespace deadshore::io {

/// Hands out a note's figures to its chapters, each once, numbered in the order in which they are
/// taken: so take them in the order of the page.
class FigureShelf {
 public:
  /// `figures` must outlive the shelf and the document.
  explicit FigureShelf(std::span<const viz::Figure> figures);

  /// The figure of this name; empty where there is none or it was taken before.
  [[nodiscard]] Blocks take(std::string_view name);

  /// Every figure left whose name begins so.
  [[nodiscard]] Blocks take_all(std::string_view beginning);

 private:
  Figure taken(std::size_t index);

  std::span<const viz::Figure> figures_;
  std::vector<bool> taken_;
  int count_ = 0;  ///< of those taken
};

inline FigureShelf::FigureShelf(std::span<const viz::Figure> figures)
    : figures_(figures), taken_(figures.size(), false) {}

inline Blocks FigureShelf::take(std::string_view name) {
  for (std::size_t i = 0; i < figures_.size(); ++i) {
    if (!taken_[i] && figures_[i].name == name) return taken(i);
  }
  return {};
}

inline Blocks FigureShelf::take_all(std::string_view beginning) {
  Blocks all;
  for (std::size_t i = 0; i < figures_.size(); ++i) {
    if (!taken_[i] && figures_[i].name.starts_with(beginning)) all += taken(i);
  }
  return all;
}

inline Figure FigureShelf::taken(std::size_t index) {
  taken_[index] = true;
  return {&figures_[index], ++count_};
}

}  // namespace deadshore::io
