#include "io/document/block.h"

#include <iterator>

namespace deadshore::io {

Text operator+(Text left, const Text& right) {
  left.runs.insert(left.runs.end(), right.runs.begin(), right.runs.end());
  return left;
}

Text strong(std::string words) {
  return Run{std::move(words), Mark::strong};
}

Text link_to(std::string target, std::string words) {
  return Run{std::move(words), Mark::link, std::move(target)};
}

List bullets(const std::vector<std::string>& sentences) {
  return {{sentences.begin(), sentences.end()}};
}

Column numeric(std::string heading) {
  Column column(std::move(heading));
  column.numeric = true;
  return column;
}

void Table::add(std::vector<Text> cells, RowKind kind) {
  rows.push_back({std::move(cells), kind});
}

bool Table::is_worked(std::size_t row) const {
  return row + 1 < rows.size() && rows[row + 1].kind == RowKind::working;
}

bool Table::starts_group(std::size_t row) const {
  if (row == 0 || rows[row].kind == RowKind::heading) return true;
  return is_worked(row) && rows[row - 1].kind != RowKind::heading;
}

Text caption_of(const Figure& figure) {
  return strong("Figure " + std::to_string(figure.number) + ".") + " " + figure.drawn->caption;
}

Blocks& Blocks::operator+=(Blocks more) {
  blocks_.insert(blocks_.end(), std::make_move_iterator(more.blocks_.begin()),
                 std::make_move_iterator(more.blocks_.end()));
  return *this;
}

Blocks operator+(Blocks left, Blocks right) {
  left += std::move(right);
  return left;
}

Callout callout(Severity severity, std::string bold, const Text& words, const Blocks& more) {
  return {severity, Paragraph{strong(std::move(bold)) + " " + words} + more};
}

}  // namespace deadshore::io
