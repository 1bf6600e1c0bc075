#include "io/pdf/lay_blocks.h"
#include "io/pdf/table_row.h"

#include <algorithm>
#include <utility>

namespace deadshore::io {
namespace {

class TableLayout {
 public:
  TableLayout(FlowBuilder& flow, const Table& table, const Measure& measure)
      : TableLayout(flow, measure, (table.dense ? 0.84 : 0.9) * measure.em) {
    columns_ = table.columns.size();
    head_.push_back(head_of(table));
    for (std::size_t row = 0; row < table.rows.size(); ++row) rows_.push_back(row_of(table, row));
  }

  TableLayout(FlowBuilder& flow, const Form& form, const Measure& measure)
      : TableLayout(flow, measure, 0.9 * measure.em) {
    plan_.form = true;
    for (const std::vector<Form::Entry>& entries : form.rows) {
      rows_.push_back(form_row(entries));
      const SetCell& last = rows_.back().cells.back();
      columns_ = std::max(columns_, last.column + last.columns);
    }
    rows_.front().starts_group = true;
  }

  void lay(const std::string& id, const std::string& caption) {
    plan_columns();
    for (SetRow& row : head_) wrap(row);
    for (SetRow& row : rows_) wrap(row);

    flow_->space(0.8 * em_);
    flow_->anchor(id);
    add_caption(caption);
    const std::size_t head = add_head();
    add_rows(head);
    flow_->space(1.1 * em_);
  }

 private:
  TableLayout(FlowBuilder& flow, const Measure& measure, double size)
      : flow_(&flow), em_(measure.em), size_(size), padding_(0.9 * size) {
    plan_.left = measure.left;
    plan_.width = measure.width;
    plan_.padding = padding_;
  }

  [[nodiscard]] SetRow head_of(const Table& table) const {
    SetRow row;
    row.head = true;
    row.above = row.below = 0.28 * size_;
    for (const Column& column : table.columns) {
      SetCell& cell = row.cells.emplace_back();
      cell.text = flow_->measured(column.heading, {size_, paper::faint});
      cell.column = row.cells.size() - 1;
      cell.numeric = column.numeric;
    }
    return row;
  }

  [[nodiscard]] SetRow row_of(const Table& table, std::size_t index) const {
    const Row& row = table.rows[index];
    const RowKind kind = row.kind;
    const bool barred = kind == RowKind::fails || kind == RowKind::unverified;
    const bool working = kind == RowKind::working;
    const bool bold = barred || kind == RowKind::heading || kind == RowKind::total;
    SetRow set;
    set.kind = kind;
    set.worked = table.is_worked(index);
    set.starts_group = table.starts_group(index);
    set.above = (working ? 0.1 : kind == RowKind::heading ? 1.0 : 0.28) * size_;
    set.below = (set.worked ? 0.0 : working ? 0.5 : 0.28) * size_;
    TypeFace face{working ? 0.84 * size_ : size_, working ? paper::faint : paper::ink};
    for (std::size_t column = 0; column < row.cells.size(); ++column) {
      SetCell& cell = set.cells.emplace_back();
      face.bold = bold || table.columns[column].strong;
      cell.text = flow_->measured(row.cells[column], face);
      cell.column = column;
      if (column + 1 == row.cells.size()) cell.columns = columns_ - column;
      cell.numeric = table.columns[column].numeric && cell.columns == 1 && kind != RowKind::heading;
      cell.indent = column == 0 && barred ? paper::bar_width + 0.4 * size_ : 0.0;
    }
    return set;
  }

  [[nodiscard]] SetRow form_row(const std::vector<Form::Entry>& entries) const {
    SetRow row;
    row.above = row.below = 0.28 * size_;
    std::size_t column = 0;
    const auto add = [&](const std::string& words, viz::Colour colour, std::size_t columns) {
      SetCell& cell = row.cells.emplace_back();
      cell.text = flow_->measured(words, {size_, colour});
      cell.column = column;
      cell.columns = columns;
      cell.indent = 0.5 * size_;
      column += columns;
    };
    for (const Form::Entry& entry : entries) {
      add(entry.label, paper::faint, 1);
      add(entry.text, paper::ink, static_cast<std::size_t>(entry.columns));
      viz::Size& room = row.cells.back().at_least;
      room.width = 14.0 * size_;
      if (entry.text.empty()) room.height = 6.5 * paper::millimetre;
    }
    return row;
  }

  [[nodiscard]] double padding_after(std::size_t column) const {
    return column + 1 == columns_ ? 0.2 * padding_ : padding_;
  }

  /// Figures stand in one line, their headings need not.
  void ask(std::vector<ColumnDemand>& demands, const SetCell& cell, bool head) const {
    const double extra = cell.indent + padding_after(cell.column);
    const bool whole = !head && cell.numeric;
    const double most = std::max(cell.text->natural_width(), cell.at_least.width) + extra;
    const double least =
        whole ? most : std::max(cell.text->least_width(), cell.at_least.width) + extra;
    if (!head || !cell.numeric)
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

  void add_caption(const std::string& words) {
    if (words.empty()) return;
    flow_->add_lines(flow_->measured(words, {0.9 * em_, paper::faint}), {plan_.left, plan_.width});
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
      for (; end < rows_.size() && !rows_[end].starts_group; ++end) part += rows_[end].height();
      if (part < short_part)
        std::fill(joins.begin() + static_cast<std::ptrdiff_t>(start) + 1,
                  joins.begin() + static_cast<std::ptrdiff_t>(end), Join::together);
      start = end;
    }
    if (whole < short_part) std::ranges::fill(joins, Join::together);
    for (std::size_t i = 1; i < rows_.size(); ++i) {
      const bool lone = i == 1 || i + 1 == rows_.size();
      if (lone) joins[i] = Join::together;
      if (rows_[i].kind == RowKind::working || rows_[i].kind == RowKind::total ||
          rows_[i - 1].kind == RowKind::heading) {
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
  double em_;
  double size_;
  double padding_;
  std::size_t columns_ = 0;
  double head_height_ = 0.0;
  TablePlan plan_;
  std::vector<SetRow> head_;
  std::vector<SetRow> rows_;
};

}  // namespace

void lay(FlowBuilder& flow, const Table& table, const Measure& measure) {
  TableLayout(flow, table, measure).lay(table.id, table.caption);
}

void lay(FlowBuilder& flow, const Form& form, const Measure& measure) {
  if (form.rows.empty()) return;
  TableLayout(flow, form, measure).lay(form.id, "");
}

}  // namespace deadshore::io
