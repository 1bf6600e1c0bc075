#include "io/note/chapter.h"

#include <fmt/format.h>

#include <utility>

namespace deadshore::io {
namespace {

/// `number` 0 is none.
Html heading_of(const Chapter& chapter, int number) {
  Html words;
  if (number > 0) words += Html::trusted(fmt::format("<span class=\"number\">{}</span> ", number));
  return element("h2", words + text(chapter.heading));
}

Html chapter_of(const Chapter& chapter, int number) {
  return Html::trusted(fmt::format("<section id=\"{}\">\n", escape_html(chapter.id))) +
         element("div", heading_of(chapter, number) + chapter.opening, "keep") + chapter.rest +
         Html::trusted("</section>\n");
}

Html contents_line(const Chapter& chapter, int number) {
  Html words;
  if (number > 0) words += Html::trusted(fmt::format("<span class=\"number\">{}</span> ", number));
  return element("li", words + link_to(chapter.id, chapter.heading));
}

/// Calls `write` with each chapter that is there and its number.
template <class Write>
Html numbered_by(std::span<const Chapter> chapters, const Write& write) {
  Html html;
  int number = 0;
  for (const Chapter& chapter : chapters) {
    if (chapter.is_there()) html += write(chapter, ++number);
  }
  return html;
}

}  // namespace

Chapter section(std::string_view id, std::string_view heading, Html opening, Html rest) {
  return {std::string(id), std::string(heading), std::move(opening), std::move(rest)};
}

Chapter followed_by(Chapter chapter, const Html& more) {
  if (chapter.is_there()) chapter.rest += more;
  return chapter;
}

Html contents_of(const Chapter& before, std::span<const Chapter> numbered) {
  const Html lines = contents_line(before, 0) + numbered_by(numbered, contents_line);
  return Html::trusted("<nav id=\"contents\" aria-labelledby=\"contents-heading\">\n") +
         Html::trusted("<h2 id=\"contents-heading\">Contents</h2>\n") + element("ol", lines) +
         Html::trusted("</nav>\n");
}

Html body_of(const Chapter& chapter) {
  return chapter.is_there() ? chapter_of(chapter, 0) : Html();
}

Html body_of(std::span<const Chapter> numbered) {
  return numbered_by(numbered, chapter_of);
}

Html link_to(std::string_view id, std::string_view words) {
  return Html::trusted(fmt::format("<a href=\"#{}\">{}</a>", escape_html(id), escape_html(words)));
}

}  // namespace deadshore::io
