#include "io/job/title_block_reader.h"

namespace deadshore::io {
namespace {

std::string text_if_any(const JobTable& table, std::string_view key) {
  return table.has(key) ? table.text(key) : std::string();
}

}  // namespace

solver::TitleBlock read_title_block(const JobTable& table) {
  return {.project = text_if_any(table, "project"),
          .client = text_if_any(table, "client"),
          .reference = text_if_any(table, "reference"),
          .revision = text_if_any(table, "revision"),
          .prepared_by = text_if_any(table, "prepared_by"),
          .checked_by = text_if_any(table, "checked_by"),
          .date = text_if_any(table, "date")};
}

}  // namespace deadshore::io
