#include "io/document/html.h"

#include "io/document/built_in.h"

#include <fmt/format.h>

#include <array>
#include <span>

namespace deadshore::io {
namespace {

constexpr double widest_upright = 600.0;  ///< points; wider does not fit a page that stands

/// By `Mark`; those without a tag of their own are empty.
constexpr std::array<const char*, 6> tags = {"", "strong", "em", "code", "sub", "sup"};

Html run_html(const Run& run) {
  const std::string words = escape_html(run.text);
  switch (run.mark) {
    case Mark::plain:
      return Html::trusted(words);
    case Mark::link:
      return Html::trusted(fmt::format("<a href=\"{}\">{}</a>", escape_html(run.target), words));
    case Mark::hold:
      return Html::trusted("<span class=\"hold\"><span class=\"box\"></span>" + words +
                           "</span>\n");
    default:
      return Html::trusted(
          fmt::format("<{0}>{1}</{0}>", tags[static_cast<std::size_t>(run.mark)], words));
  }
}

const char* class_of(Tone tone) {
  constexpr std::array classes = {"", "small", "faint"};
  return classes[static_cast<std::size_t>(tone)];
}

const char* class_of(Severity severity) {
  constexpr std::array classes = {"warning", "alarm"};
  return classes[static_cast<std::size_t>(severity)];
}

const char* class_of(RowKind kind) {
  constexpr std::array classes = {"", "group", "total", "fails", "unverified", "working"};
  return classes[static_cast<std::size_t>(kind)];
}

std::string class_of(const Column& column) {
  std::string words = column.numeric ? "fig" : "";
  if (column.strong) words += words.empty() ? "strong" : " strong";
  return words.empty() ? "" : fmt::format(" class=\"{}\"", words);
}

Html cell_html(const Table& table, const Row& row, std::size_t index) {
  const bool spans = index + 1 == row.cells.size() && row.cells.size() < table.columns.size();
  const bool heads = row.kind == RowKind::heading || (index == 0 && row.kind != RowKind::working);
  std::string attributes;
  if (row.kind != RowKind::heading && !spans) attributes = class_of(table.columns[index]);
  if (spans) attributes += fmt::format(" colspan=\"{}\"", table.columns.size() - index);
  if (heads) attributes += row.kind == RowKind::heading ? " scope=\"rowgroup\"" : " scope=\"row\"";
  const char* tag = heads ? "th" : "td";
  return Html::trusted(fmt::format("<{}{}>", tag, attributes)) + html_of(row.cells[index]) +
         Html::trusted(fmt::format("</{}>", tag));
}

Html row_html(const Table& table, std::size_t index) {
  const Row& row = table.rows[index];
  Html cells;
  for (std::size_t cell = 0; cell < row.cells.size(); ++cell) cells += cell_html(table, row, cell);
  std::string css_class = class_of(row.kind);
  if (table.is_worked(index)) css_class += css_class.empty() ? "worked" : " worked";
  return element("tr", cells, css_class);
}

Html head_html(const Table& table) {
  Html cells;
  for (const Column& column : table.columns) {
    cells += Html::trusted(fmt::format("<th scope=\"col\"{}>", class_of(column))) +
             html_of(Text(column.heading)) + Html::trusted("</th>");
  }
  return element("thead", element("tr", cells));
}

Html entry_html(const Form::Entry& entry) {
  const std::string spans = entry.columns > 1 ? fmt::format(" colspan=\"{}\"", entry.columns) : "";
  const bool blank = entry.text.empty();
  return Html::trusted(
      fmt::format("<th scope=\"row\">{}</th><td{}{}>{}</td>", escape_html(entry.label), spans,
                  blank ? " class=\"blank\"" : "",
                  blank ? "<span class=\"screen-only\">to be filled in by hand</span>"
                        : escape_html(entry.text)));
}

Html block_html(const Heading& heading) {
  return element(fmt::format("h{}", heading.level), html_of(heading.text));
}

Html block_html(const Paragraph& paragraph) {
  return element("p", html_of(paragraph.text), class_of(paragraph.tone));
}

Html block_html(const List& list) {
  Html items;
  for (const Text& item : list.items) items += element("li", html_of(item));
  return list.items.empty() ? Html() : element(list.numbered ? "ol" : "ul", items);
}

Html block_html(const Table& table) {
  Html groups;
  for (std::size_t row = 0; row < table.rows.size();) {
    Html rows;
    do {
      rows += row_html(table, row++);
    } while (row < table.rows.size() && !table.starts_group(row));
    groups += element("tbody", rows);
  }
  const Html caption =
      table.caption.empty() ? Html() : element("caption", html_of(Text(table.caption)));
  return Html::trusted(fmt::format("<div class=\"scroll\"><table id=\"{}\"{}>\n",
                                   escape_html(table.id), table.dense ? " class=\"dense\"" : "")) +
         caption + head_html(table) + groups + Html::trusted("</table></div>\n");
}

Html block_html(const Form& form) {
  Html rows;
  for (const std::vector<Form::Entry>& entries : form.rows) {
    Html cells;
    for (const Form::Entry& entry : entries) cells += entry_html(entry);
    rows += element("tr", cells);
  }
  return Html::trusted(fmt::format("<table id=\"{}\" class=\"form\">\n", escape_html(form.id))) +
         element("tbody", rows) + Html::trusted("</table>\n");
}

Html block_html(const Figure& figure) {
  const viz::Figure& drawn = *figure.drawn;
  const bool wide = drawn.drawing.size.width > widest_upright;
  return Html::trusted(fmt::format("<figure data-figure=\"{}\"{}>\n", escape_html(drawn.name),
                                   wide ? " class=\"wide\"" : "")) +
         element("div",
                 inline_svg(drawn.svg, fmt::format("figure-{}-", figure.number), drawn.caption),
                 "scroll") +
         element("figcaption", html_of(caption_of(figure))) + Html::trusted("</figure>\n");
}

Html block_html(const Listing& listing) {
  return element("pre", html_of(Text(listing.text)));
}

Html block_html(const StageViewer& viewer) {
  return html_of(viewer);
}

/// A single paragraph is its own frame.
Html block_html(const Callout& callout) {
  const auto* const alone = std::next(callout.blocks.begin()) == callout.blocks.end()
                                ? std::get_if<Paragraph>(&callout.blocks.begin()->content)
                                : nullptr;
  return alone != nullptr ? element("p", html_of(alone->text), class_of(callout.severity))
                          : element("div", html_of(callout.blocks), class_of(callout.severity));
}

Html block_html(const Beside& beside) {
  return element("div", html_of(beside.blocks), "beside");
}

/// `number` 0 is none.
Html number_html(int number) {
  return number > 0 ? Html::trusted(fmt::format("<span class=\"number\">{}</span> ", number))
                    : Html();
}

Html contents_line(const Chapter& chapter, int number) {
  return element("li", number_html(number) + html_of(link_to("#" + chapter.id, chapter.heading)));
}

Html contents_html(const Document& document) {
  Html lines = contents_line(document.summary, 0);
  int number = 0;
  for (const Chapter& chapter : document.chapters) lines += contents_line(chapter, ++number);
  return Html::trusted(
             "<nav id=\"contents\" aria-labelledby=\"contents-heading\">\n"
             "<h2 id=\"contents-heading\">Contents</h2>\n") +
         element("ol", lines) + Html::trusted("</nav>\n");
}

Html chapter_html(const Chapter& chapter, int number) {
  const Html heading = element("h2", number_html(number) + html_of(Text(chapter.heading)));
  return Html::trusted(fmt::format("<section id=\"{}\">\n", escape_html(chapter.id))) +
         element("div", heading + html_of(chapter.opening), "keep") + html_of(chapter.rest) +
         Html::trusted("</section>\n");
}

void put_after_every(std::string& markup, std::string_view opener, std::string_view prefix) {
  for (std::size_t at = markup.find(opener); at != std::string::npos;
       at = markup.find(opener, at + opener.size())) {
    markup.insert(at + opener.size(), prefix);
  }
}

}  // namespace

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

std::string escape_html(std::string_view plain) {
  std::string safe;
  safe.reserve(plain.size());
  for (const char c : plain) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '&') {
      safe += "&amp;";
    } else if (c == '<') {
      safe += "&lt;";
    } else if (c == '>') {
      safe += "&gt;";
    } else if (c == '"') {
      safe += "&quot;";
    } else if (c == '\'') {
      safe += "&#39;";
    } else if (byte < 0x20 && c != '\t' && c != '\n' && c != '\r') {
      safe += "\uFFFD";
    } else {
      safe += c;
    }
  }
  return safe;
}

Html element(std::string_view tag, const Html& inner, std::string_view css_class) {
  const std::string attribute =
      css_class.empty() ? "" : fmt::format(" class=\"{}\"", escape_html(css_class));
  return Html::trusted(fmt::format("<{0}{1}>{2}</{0}>\n", tag, attribute, inner.str()));
}

Html html_of(const Text& text) {
  Html html;
  for (const Run& run : text.runs) html += run_html(run);
  return html;
}

Html html_of(const Blocks& blocks) {
  Html html;
  for (const Block& block : blocks) {
    html += std::visit([](const auto& content) { return block_html(content); }, block.content);
  }
  return html;
}

Html inline_svg(std::string_view svg, std::string_view prefix, std::string_view label) {
  const std::size_t start = svg.find("<svg");
  if (start == std::string_view::npos) return {};
  std::string markup(svg.substr(start));
  // Everything that stands directly before an id in SVG.
  for (const char* opener : {" id=\"", "href=\"#", "url(#"}) {
    put_after_every(markup, opener, prefix);
  }
  markup.insert(4, fmt::format(" role=\"img\" aria-label=\"{}\"", escape_html(label)));
  return Html::trusted(std::move(markup));
}

std::string html_page(std::string_view title, std::string_view style, const Html& body) {
  const Html head = Html::trusted(
                        "<meta charset=\"utf-8\"/>\n<meta name=\"viewport\" "
                        "content=\"width=device-width, initial-scale=1\"/>\n") +
                    element("title", Html::trusted(escape_html(title))) +
                    element("style", Html::trusted(std::string(style)));
  return "<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\">\n" +
         (element("head", head) + element("body", body)).str() + "</html>\n";
}

std::string document_html(const Document& document) {
  Html page = element("header", html_of(document.front)) + contents_html(document) +
              chapter_html(document.summary, 0) + html_of(document.after_summary);
  int number = 0;
  for (const Chapter& chapter : document.chapters) page += chapter_html(chapter, ++number);
  return html_page(document.title, std::string(document_css()) + std::string(viewer_css()),
                   element("main", page));
}

}  // namespace deadshore::io
