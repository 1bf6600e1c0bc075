#include "io/pdf/table_row.h"

#include <algorithm>
#include <cstddef>
namespace deadshore::io {

namespace {

constexpr double thin = 0.75;

/// Shade and bar of a row that must be seen, in grey print too: one broad bar, or two thin ones.
void dress_row(const Ink& ink, RowKind kind, const viz::Rect& box) {
  if (kind == RowKind::fails) {
    ink.fill(box, paper::alarm_shade);
    ink.fill({box.left, box.top, box.left + paper::bar_width, box.bottom}, paper::alarm);
  } else if (kind == RowKind::unverified) {
    ink.fill(box, paper::warning_shade);
    for (const double at : {0.0, paper::bar_width - 1.2}) {
      ink.fill({box.left + at, box.top, box.left + at + 1.2, box.bottom}, paper::warning);
    }
  }
}

/// Lines round the cells of a form; the one below is every row's own.
void rule_cells(const Ink& ink, const SetRow& row, const TablePlan& plan, const viz::Rect& box) {
  ink.fill({box.left, box.top - thin, box.right, box.top}, paper::line);
  for (const SetCell& cell : row.cells) {
    const double at = box.left + plan.starts[cell.column];
    ink.fill({at, box.top, at + thin, box.bottom}, paper::line);
  }
  ink.fill({box.right - thin, box.top, box.right, box.bottom}, paper::line);
}

}  // namespace

double SetRow::text_height() const {
  double tallest = 0.0;
  for (const SetCell& cell : cells) {
    tallest = std::max({tallest, cell.text->height(), cell.at_least.height});
  }
  return tallest;
}

int SetRow::lines() const {
  int most = 0;
  for (const SetCell& cell : cells) most = std::max(most, cell.text->lines());
  return most;
}

double SetRow::line_height(int line) const {
  double tallest = 0.0;
  for (const SetCell& cell : cells) {
    if (line < cell.text->lines()) tallest = std::max(tallest, cell.text->line_height(line));
  }
  return tallest;
}

double TablePlan::room(const SetCell& cell) const {
  const std::size_t end = std::min(cell.column + cell.columns, starts.size() - 1);
  const bool last = end + 1 == starts.size();
  return starts[end] - starts[cell.column] - cell.indent - (last ? 0.2 * padding : padding);
}

void draw_row(const Ink& ink, const SetRow& row, const TablePlan& plan, viz::PagePoint at) {
  const double left = at.x + plan.left;
  const double tallest = row.text_height();
  const viz::Rect box{left, at.y, left + plan.width, at.y + row.above + tallest + row.below};
  dress_row(ink, row.kind, box);
  for (const SetCell& cell : row.cells) {
    const double down = row.head ? tallest - cell.text->height() : 0.0;
    cell.text->draw(ink, left + plan.start(cell), at.y + row.above + down, plan.room(cell),
                    cell.numeric ? 1.0 : 0.0);
  }
  if (plan.form) rule_cells(ink, row, plan, box);
  if (row.kind == RowKind::total)
    ink.fill({box.left, box.top - thin, box.right, box.top}, paper::ink);
  if (!row.worked) {
    ink.fill({box.left, box.bottom - thin, box.right, box.bottom},
             row.head ? paper::ink : paper::line);
  }
}

void draw_line_of_row(const Ink& ink, const SetRow& row, int line, const TablePlan& plan,
                      viz::PagePoint at) {
  const double left = at.x + plan.left;
  dress_row(ink, row.kind, {left, at.y, left + plan.width, at.y + row.line_height(line)});
  for (const SetCell& cell : row.cells) {
    if (line >= cell.text->lines()) continue;
    const double spare = std::max(0.0, plan.room(cell) - cell.text->line_width(line));
    cell.text->draw_line(ink, line, left + plan.start(cell) + (cell.numeric ? spare : 0.0), at.y);
  }
}

namespace {

/// The cap on widths under which the least widths add up to `width`.
double cap_for(std::span<const ColumnDemand> demands, double width) {
  std::vector<double> least;
  for (const ColumnDemand& demand : demands) least.push_back(demand.least);
  std::ranges::sort(least);
  double rest = width;
  for (std::size_t i = 0; i < least.size(); ++i) {
    const double even = rest / static_cast<double>(least.size() - i);
    if (least[i] > even) return even;
    rest -= least[i];
  }
  return width;
}

/// Lets the narrowest columns have their lines whole, while that leaves room for the others.
std::vector<ColumnDemand> with_whole_columns(std::span<const ColumnDemand> demands, double width) {
  constexpr double narrow = 0.22;
  constexpr double crowded = 0.75;
  std::vector<ColumnDemand> kept(demands.begin(), demands.end());
  double least = 0.0;
  std::vector<ColumnDemand*> by_width;
  for (ColumnDemand& demand : kept) {
    least += demand.least;
    by_width.push_back(&demand);
  }
  std::ranges::sort(by_width, {}, &ColumnDemand::whole);
  for (ColumnDemand* demand : by_width) {
    const double more = std::max(0.0, demand->whole - demand->least);
    if (demand->whole > narrow * width || least + more > crowded * width) continue;
    demand->least += more;
    least += more;
  }
  return kept;
}

}  // namespace

std::vector<double> column_widths(std::span<const ColumnDemand> asked, double width) {
  const std::vector<ColumnDemand> demands = with_whole_columns(asked, width);
  double least = 0.0;
  double most = 0.0;
  for (const ColumnDemand& demand : demands) {
    least += demand.least;
    most += std::max(demand.least, demand.most);
  }
  std::vector<double> widths;
  if (least > width) {
    const double cap = cap_for(demands, width);
    for (const ColumnDemand& demand : demands) widths.push_back(std::min(demand.least, cap));
    return widths;
  }
  for (const ColumnDemand& demand : demands) {
    const double natural = std::max(demand.least, demand.most);
    if (most <= width) {
      widths.push_back(most > 0.0 ? natural * width / most
                                  : width / static_cast<double>(demands.size()));
    } else {
      widths.push_back(demand.least + (natural - demand.least) * (width - least) / (most - least));
    }
  }
  return widths;
}

}  // namespace deadshore::io
