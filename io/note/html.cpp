#include "io/note/html.h"

#include <fmt/format.h>

#include <cstddef>

namespace deadshore::io {
namespace {

std::string class_attribute(std::string_view css_class) {
  return css_class.empty() ? std::string() : fmt::format(" class=\"{}\"", escape_html(css_class));
}

Html head_of(const Table& content) {
  Html cells;
  for (const Column& column : content.columns) {
    cells +=
        Html::trusted(fmt::format("<th scope=\"col\"{}>", column.figures ? " class=\"fig\"" : ""));
    cells += text(column.heading);
    cells += Html::trusted("</th>");
  }
  return element("thead", element("tr", cells));
}

Html cell_of(const Table& content, const Row& row, std::size_t index) {
  const bool spans = index + 1 == row.cells.size() && row.cells.size() < content.columns.size();
  const bool heads = row.kind == RowKind::heading || (index == 0 && row.kind != RowKind::working);
  const bool figures = content.columns[index].figures && row.kind != RowKind::heading && !spans;

  std::string attributes = figures ? " class=\"fig\"" : "";
  if (spans) {
    attributes += fmt::format(" colspan=\"{}\"", content.columns.size() - index);
  }
  if (heads) attributes += row.kind == RowKind::heading ? " scope=\"rowgroup\"" : " scope=\"row\"";
  const char* tag = heads ? "th" : "td";
  return Html::trusted(fmt::format("<{}{}>", tag, attributes)) + text(row.cells[index]) +
         Html::trusted(fmt::format("</{}>", tag));
}

std::string class_of(RowKind kind) {
  switch (kind) {
    case RowKind::plain:
      return "";
    case RowKind::heading:
      return "group";
    case RowKind::total:
      return "total";
    case RowKind::fails:
      return "fails";
    case RowKind::unverified:
      return "unverified";
    case RowKind::working:
      return "working";
  }
  return "";
}

Html row_of(const Table& content, const Row& row, bool worked) {
  Html cells;
  for (std::size_t index = 0; index < row.cells.size(); ++index) {
    cells += cell_of(content, row, index);
  }
  std::string css_class = class_of(row.kind);
  if (worked) css_class += css_class.empty() ? "worked" : " worked";
  return element("tr", cells, css_class);
}

}  // namespace

std::string escape_html(std::string_view plain) {
  std::string safe;
  safe.reserve(plain.size());
  for (const char c : plain) {
    switch (c) {
      case '&':
        safe += "&amp;";
        break;
      case '<':
        safe += "&lt;";
        break;
      case '>':
        safe += "&gt;";
        break;
      case '"':
        safe += "&quot;";
        break;
      case '\'':
        safe += "&#39;";
        break;
      default: {
        const auto byte = static_cast<unsigned char>(c);
        const bool forbidden = byte < 0x20 && c != '\t' && c != '\n' && c != '\r';
        if (forbidden) {
          safe += "\xEF\xBF\xBD";
        } else {
          safe += c;
        }
      }
    }
  }
  return safe;
}

Html Html::trusted(std::string markup) {
  Html html;
  html.markup_ = std::move(markup);
  return html;
}

Html& Html::operator+=(const Html& other) {
  markup_ += other.markup_;
  return *this;
}

Html operator+(Html left, const Html& right) {
  left += right;
  return left;
}

Html text(std::string_view plain) {
  return Html::trusted(escape_html(plain));
}

Html element(std::string_view tag, const Html& inner, std::string_view css_class) {
  return Html::trusted(
      fmt::format("<{0}{1}>{2}</{0}>\n", tag, class_attribute(css_class), inner.str()));
}

Html paragraph(std::string_view plain, std::string_view css_class) {
  return element("p", text(plain), css_class);
}

Html paragraph(std::string_view bold, std::string_view plain, std::string_view css_class) {
  return element(
      "p", Html::trusted(fmt::format("<strong>{}</strong> ", escape_html(bold))) + text(plain),
      css_class);
}

Html bullets(std::span<const std::string> sentences) {
  Html items;
  for (const std::string& sentence : sentences) items += element("li", text(sentence));
  return sentences.empty() ? Html() : element("ul", items);
}

Html table(const Table& content) {
  Html groups;
  Html rows;
  const auto close_group = [&] {
    if (!rows.str().empty()) groups += element("tbody", rows);
    rows = Html();
  };
  for (std::size_t index = 0; index < content.rows.size(); ++index) {
    const Row& row = content.rows[index];
    const bool worked =
        index + 1 < content.rows.size() && content.rows[index + 1].kind == RowKind::working;
    const bool headed = index > 0 && content.rows[index - 1].kind == RowKind::heading;
    if (row.kind == RowKind::heading || (worked && !headed)) close_group();
    rows += row_of(content, row, worked);
  }
  close_group();

  const Html caption = content.caption.empty() ? Html() : element("caption", text(content.caption));
  return Html::trusted(
             fmt::format("<div class=\"scroll\"><table id=\"{}\">\n", escape_html(content.id))) +
         caption + head_of(content) + groups + Html::trusted("</table></div>\n");
}

}  // namespace deadshore::io
