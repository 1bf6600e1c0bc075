#pragma once

#include "tests/io/scratch_folder.h"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace deadshore::io::test {

/// A word of a page and where it stands, points from the page's top left corner.
struct PdfWord {
  double left = 0.0;
  double top = 0.0;
  double right = 0.0;
  double bottom = 0.0;
  std::string text;
};
struct PdfPage {
  double width = 0.0;
  double height = 0.0;
  std::vector<PdfWord> words;
};

/// A PDF document as other people's program reads it (poppler's command line tools).
class PdfFile {
 public:
  explicit PdfFile(const std::string& bytes);

  /// The text of each page in the order in which it was drawn.
  [[nodiscard]] std::vector<std::string> page_texts() const;
  [[nodiscard]] std::vector<PdfPage> pages() const;
  /// How many images made of dots it holds.
  [[nodiscard]] std::size_t images() const;
  /// A line for each font: name, type, whether embedded, ...
  [[nodiscard]] std::vector<std::string> fonts() const;
  [[nodiscard]] std::string information() const { return output_of("pdfinfo", ""); }
  /// What links, and the page it leads to, as poppler cuts it into pieces.
  [[nodiscard]] std::vector<std::pair<std::string, int>> links() const;
  /// The bookmarks, in order, and each with its page.
  [[nodiscard]] std::vector<std::pair<std::string, int>> bookmarks() const;

 private:
  [[nodiscard]] std::string output_of(const std::string& tool, const std::string& options,
                                      const std::string& target = "") const;

  ScratchFolder folder_;
};

/// Text without its white space: how words are broken into lines does not matter then.
[[nodiscard]] std::string squeezed(std::string_view text);

/// The first page, from 1, whose text holds this, white space aside; 0 if none does.
[[nodiscard]] std::size_t page_with(const std::vector<std::string>& pages, std::string_view text);

}  // namespace deadshore::io::test
