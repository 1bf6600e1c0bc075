#pragma once

#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace deadshore::io {

/// Plain text made safe for element content and quoted attributes; control characters that XML
/// forbids become U+FFFD.
[[nodiscard]] std::string escape_html(std::string_view plain);

/// A piece of well-formed XHTML. A type of its own, so that a name from the job cannot get into the
/// page unescaped: plain text becomes Html only through `text`.
class Html {
 public:
  Html() = default;

  /// Markup written by us, taken as it stands.
  [[nodiscard]] static Html trusted(std::string markup);

  Html& operator+=(const Html& other);
  [[nodiscard]] const std::string& str() const { return markup_; }
  [[nodiscard]] bool empty() const { return markup_.empty(); }

 private:
  std::string markup_;
};
[[nodiscard]] Html operator+(Html left, const Html& right);

[[nodiscard]] Html text(std::string_view plain);

/// <tag class="css_class">inner</tag>; no class attribute where it is empty.
[[nodiscard]] Html element(std::string_view tag, const Html& inner,
                           std::string_view css_class = {});

[[nodiscard]] Html paragraph(std::string_view plain, std::string_view css_class = {});

/// A paragraph that opens with a bold phrase.
[[nodiscard]] Html paragraph(std::string_view bold, std::string_view plain,
                             std::string_view css_class);

[[nodiscard]] Html bullets(std::span<const std::string> sentences);

/// A table of plain text, all of it escaped. Columns are right-aligned where they hold figures.
struct Column {
  std::string heading;
  bool figures = false;
};
enum class RowKind {
  plain,
  heading,  ///< starts a group that is kept on one page
  total,
  fails,       ///< loud
  unverified,  ///< to be noticed
  working,     ///< one cell: how the row above comes about, in smaller type, on one page with it
               ///< and with a heading above them
};
struct Row {
  std::vector<std::string> cells;  ///< fewer than columns: the last cell spans the rest
  RowKind kind = RowKind::plain;
};
struct Table {
  std::string id;
  std::string caption;  ///< above the table; none where empty
  std::vector<Column> columns;
  std::vector<Row> rows;

  void add(std::vector<std::string> cells, RowKind kind = RowKind::plain) {
    rows.push_back({std::move(cells), kind});
  }
};
[[nodiscard]] Html table(const Table& content);

}  // namespace deadshore::io
