#include "io/pdf/column_widths.h"
#include "io/pdf/grid_row.h"
#include "io/pdf/lay_blocks.h"

#include <algorithm>
#include <string_view>
#include <utility>

namespace deadshore::io {
namespace {

/// What the style sheet says of single tables.
struct GridDress {
  double size = 0.9;  ///< of the text around it
  int bold_column = -1;
  bool form = false;  ///< a form with lines all round, to be filled in by hand
};

GridDress dress_of(std::string_view id) {
  constexpr double dense = 0.84;
  if (id == "checks" || id == "take-down-lines") return {dense};
  if (id == "title-block") return {0.9, -1, true};
  if (id == "design-loads") return {0.9, 4};
  return {};
}

class GridLayout {
 public:
  GridLayout(FlowBuilder& flow, const GridBlock& grid, const Measure& measure)
      : flow_(&flow),
        grid_(&grid),
        dress_(dress_of(grid.id)),
        em_(measure.em),
        size_(dress_.size * em_),
        padding_(0.9 * size_) {
    plan_.left = measure.left;
    plan_.width = measure.width;
    plan_.padding = padding_;
    plan_.form = dress_.form;
  }

  void lay() {
    for (const GridRow& row : grid_->head) head_.push_back(measured(row, true));
    for (const GridRow& row : grid_->rows) rows_.push_back(measured(row, false));
    plan_columns();
    for (SetRow& row : head_) wrap(row);
    for (SetRow& row : rows_) wrap(row);

    flow_->space(0.8 * em_);
    if (!grid_->id.empty()) flow_->anchor(grid_->id);
    add_caption();
    const std::size_t head = add_head();
    add_rows(head);
    flow_->space(1.1 * em_);
  }

 private:
  [[nodiscard]] TypeFace face_of(const GridRow& row, std::size_t column, bool head) const {
    TypeFace face{size_};
    if (row.working) face.size *= 0.84;
    if (row.working || head) face.colour = paper::faint;
    face.bold = row.heading || row.total || row.fails || row.unverified ||
                (!head && static_cast<int>(column) == dress_.bold_column);
    return face;
  }

  [[nodiscard]] std::shared_ptr<MeasuredText> labelled(const GridCell& cell) const {
    return std::make_shared<MeasuredText>(flow_->fonts(), cell.text, TypeFace{size_, paper::faint});
  }

  [[nodiscard]] SetRow measured(const GridRow& row, bool head) {
    SetRow set;
    std::size_t column = 0;
    const bool barred = row.fails || row.unverified;
    for (const GridCell& cell : row.cells) {
      SetCell put;
      put.text =
          std::make_shared<MeasuredText>(flow_->fonts(), cell.text, face_of(row, column, head));
      put.column = column;
      put.columns = static_cast<std::size_t>(cell.columns);
      put.figures = cell.figures;
      if (dress_.form && !cell.label) put.at_least.width = 14.0 * size_;
      if (cell.blank) put.at_least.height = 6.5 * paper::millimetre;
      put.indent = column == 0 && barred ? paper::bar_width + 0.4 * size_
                   : dress_.form         ? 0.5 * size_
                                         : 0.0;
      if (dress_.form && cell.label) put.text = labelled(cell);
      set.cells.push_back(std::move(put));
      column += static_cast<std::size_t>(cell.columns);
    }
    columns_ = std::max(columns_, column);
    set.above = (row.working ? 0.1 : row.heading ? 1.0 : 0.28) * size_;
    set.below = (row.worked ? 0.0 : row.working ? 0.5 : 0.28) * size_;
    set.head = head;
    set.kind = row;
    set.kind.cells.clear();
    return set;
  }

  [[nodiscard]] double padding_after(std::size_t column) const {
    return column + 1 == columns_ ? 0.2 * padding_ : padding_;
  }

  /// Figures stand in one line, their headings need not.
  void ask(std::vector<ColumnDemand>& demands, const SetCell& cell, bool head) const {
    const double extra = cell.indent + padding_after(cell.column);
    const bool whole = !head && cell.figures;
    const double most = std::max(cell.text->natural_width(), cell.at_least.width) + extra;
    const double least =
        whole ? most : std::max(cell.text->least_width(), cell.at_least.width) + extra;
    if (!head || !cell.figures)
      demands[cell.column].whole = std::max(demands[cell.column].whole, most);
    ColumnDemand& demand = demands[cell.column];
    demand.most = std::max(demand.most, most);
    demand.least = std::max(demand.least, least);
  }

  /// A cell over several columns only sees to it that its widest word fits.
  void ask_spanning(std::vector<ColumnDemand>& demands, const SetCell& cell) const {
    const std::size_t end = std::min(cell.column + cell.columns, columns_);
    double have = 0.0;
    for (std::size_t column = cell.column; column < end; ++column) have += demands[column].least;
    const double lack = std::min(cell.text->least_width(), 0.5 * plan_.width) + cell.indent +
                        padding_after(end - 1) - have;
    if (lack > 0.0) demands[end - 1].least += lack;
  }

  void plan_columns() {
    std::vector<ColumnDemand> demands(columns_);
    for (const auto* rows : {&head_, &rows_}) {
      for (const SetRow& row : *rows) {
        for (const SetCell& cell : row.cells) {
          if (cell.columns == 1) ask(demands, cell, row.head);
        }
      }
    }
    for (const auto* rows : {&head_, &rows_}) {
      for (const SetRow& row : *rows) {
        for (const SetCell& cell : row.cells) {
          if (cell.columns > 1) ask_spanning(demands, cell);
        }
      }
    }
    plan_.starts.assign(1, 0.0);
    for (const double width : column_widths(demands, plan_.width)) {
      plan_.starts.push_back(plan_.starts.back() + width);
    }
  }

  void wrap(SetRow& row) const {
    for (SetCell& cell : row.cells) cell.text->wrap(plan_.room(cell));
  }

  void add_caption() {
    if (grid_->caption.text.empty()) return;
    const auto caption = std::make_shared<MeasuredText>(flow_->fonts(), grid_->caption,
                                                        TypeFace{0.9 * em_, paper::faint});
    caption->wrap(plan_.width);
    flow_->add_lines(caption, {plan_.left, plan_.width});
    flow_->space(0.2 * em_);
    flow_->keep_next(Join::bound);
  }

  [[nodiscard]] Paint painted(const std::shared_ptr<const SetRow>& row) const {
    return
        [row, plan = plan_](const Ink& ink, viz::PagePoint at) { draw_row(ink, *row, plan, at); };
  }

  [[nodiscard]] std::size_t add_head() {
    if (head_.empty()) return no_head;
    std::vector<Strip> again;
    for (SetRow& row : head_) {
      const auto kept = std::make_shared<const SetRow>(std::move(row));
      const Strip& strip = flow_->add(kept->height(), Join::free, painted(kept));
      again.push_back(strip);
      again.back().ids.clear();
      again.back().frames.clear();
      again.back().space = 0.0;
      head_height_ += kept->height();
      flow_->keep_next(Join::bound);
    }
    return flow_->add_head(std::move(again));
  }

  /// How closely each row holds to the one above.
  [[nodiscard]] std::vector<Join> joins() const {
    constexpr double short_part = 0.4 * paper::text_height;
    std::vector<Join> joins(rows_.size(), Join::free);
    double whole = 0.0;
    for (const SetRow& row : rows_) whole += row.height();
    for (std::size_t start = 0; start < rows_.size();) {
      std::size_t end = start + 1;
      double part = rows_[start].height();
      for (; end < rows_.size() && !rows_[end].kind.starts_group; ++end)
        part += rows_[end].height();
      if (part < short_part)
        std::fill(joins.begin() + static_cast<std::ptrdiff_t>(start) + 1,
                  joins.begin() + static_cast<std::ptrdiff_t>(end), Join::together);
      start = end;
    }
    if (whole < short_part) std::ranges::fill(joins, Join::together);
    for (std::size_t i = 1; i < rows_.size(); ++i) {
      const bool lone = i == 1 || i + 1 == rows_.size();
      if (lone) joins[i] = Join::together;
      if (rows_[i].kind.working || rows_[i].kind.total || rows_[i - 1].kind.heading) {
        joins[i] = Join::bound;
      }
    }
    return joins;
  }

  void add_rows(std::size_t head) {
    const std::vector<Join> join = joins();
    for (std::size_t i = 0; i < rows_.size(); ++i) {
      const auto row = std::make_shared<const SetRow>(std::move(rows_[i]));
      if (row->height() > paper::text_height - head_height_) {
        add_in_lines(row, head);
      } else {
        flow_->add(row->height(), join[i], painted(row)).head = head;
      }
    }
  }

  /// A row taller than a page, line by line.
  void add_in_lines(const std::shared_ptr<const SetRow>& row, std::size_t head) {
    for (int line = 0; line < row->lines(); ++line) {
      flow_
          ->add(row->line_height(line), Join::free,
                [row, line, plan = plan_](const Ink& ink, viz::PagePoint at) {
                  draw_line_of_row(ink, *row, line, plan, at);
                })
          .head = head;
    }
  }

  FlowBuilder* flow_;
  const GridBlock* grid_;
  GridDress dress_;
  double em_;
  double size_;
  double padding_;
  std::size_t columns_ = 0;
  double head_height_ = 0.0;
  GridPlan plan_;
  std::vector<SetRow> head_;
  std::vector<SetRow> rows_;
};

}  // namespace

void lay_grid(FlowBuilder& flow, const GridBlock& grid, const Measure& measure) {
  if (grid.head.empty() && grid.rows.empty()) return;
  GridLayout(flow, grid, measure).lay();
}

}  // namespace deadshore::io
