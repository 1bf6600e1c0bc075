#pragma once

#include "io/pdf/measured_text.h"
#include "viz/page/page.h"

#include <cstddef>
#include <memory>
#include <span>
#include <vector>
namespace deadshore::io {

/// A cell with its text measured.
struct SetCell {
  std::shared_ptr<MeasuredText> text;
  std::size_t column = 0;
  std::size_t columns = 1;
  bool numeric = false;  ///< set to the right
  double indent = 0.0;
  viz::Size at_least;  ///< room to write in
};

/// A row of a table, set.
struct SetRow {
  std::vector<SetCell> cells;
  double above = 0.0;  ///< padding
  double below = 0.0;
  bool head = false;
  RowKind kind = RowKind::plain;
  bool worked = false;        ///< its working follows
  bool starts_group = false;  ///< see `Table::starts_group`

  [[nodiscard]] double text_height() const;
  [[nodiscard]] double height() const { return above + text_height() + below; }
  [[nodiscard]] int lines() const;  ///< of its longest cell
  [[nodiscard]] double line_height(int line) const;
};

/// Columns where they came to stand.
struct TablePlan {
  double left = 0.0;
  double width = 0.0;
  double padding = 0.0;        ///< between columns
  bool form = false;           ///< with lines round the cells
  std::vector<double> starts;  ///< one more than columns

  [[nodiscard]] double start(const SetCell& cell) const {
    return starts[cell.column] + cell.indent;
  }
  /// How wide the text of a cell may be.
  [[nodiscard]] double room(const SetCell& cell) const;
};

/// Shade, text and lines of a row.
void draw_row(const Ink& ink, const SetRow& row, const TablePlan& plan, viz::PagePoint at);

/// One line of each cell of a row that is cut between its lines.
void draw_line_of_row(const Ink& ink, const SetRow& row, int line, const TablePlan& plan,
                      viz::PagePoint at);

/// What the cells of a column ask for.
struct ColumnDemand {
  double least = 0.0;  ///< the width at which no word is broken
  double whole = 0.0;  ///< the width at which no line is, but for those of the heading
  double most = 0.0;   ///< the width at which no line is
};

/// Shares out `width` among columns as a browser's automatic table layout does (CSS 2.2, 17.5.2.2,
/// and common practice where that leaves it open): all lines whole if there is room, and the room
/// left over in proportion; else every column its least width and a share of the rest in proportion
/// to what it lacks; else, where not even the words fit, the widest columns give way. Beyond that,
/// narrow columns keep their lines whole as long as the wide ones have words' room enough. The
/// widths add up to `width`.
[[nodiscard]] std::vector<double> column_widths(std::span<const ColumnDemand> asked, double width);

}  // namespace deadshore::io
