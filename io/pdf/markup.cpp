#include "io/pdf/markup.h"

#include "viz/page/cairo_parts.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <stdexcept>

namespace deadshore::io {
namespace {

using namespace std::string_view_literals;

constexpr std::array known_classes = {
    "alarm"sv,      "blank"sv,       "fails"sv,  "fig"sv,    "good"sv,   "group"sv,
    "hand-sum"sv,   "job"sv,         "keep"sv,   "kind"sv,   "number"sv, "on-screen"sv,
    "print-only"sv, "screen-only"sv, "scroll"sv, "small"sv,  "total"sv,  "unverified"sv,
    "verdict"sv,    "warning"sv,     "wide"sv,   "worked"sv, "working"sv};

template <class List>
bool holds(const List& list, std::string_view word) {
  return std::ranges::find(list, word) != list.end();
}

bool is_space(char c) {
  return c == ' ' || c == '\n' || c == '\t' || c == '\r';
}

std::vector<std::string_view> words_of(std::string_view text) {
  std::vector<std::string_view> words;
  std::size_t at = 0;
  while (at < text.size()) {
    while (at < text.size() && is_space(text[at])) ++at;
    const std::size_t start = at;
    while (at < text.size() && !is_space(text[at])) ++at;
    if (at > start) words.push_back(text.substr(start, at - start));
  }
  return words;
}

std::optional<Mark> mark_of(std::string_view tag) {
  if (tag == "strong" || tag == "b") return Mark::strong;
  if (tag == "em" || tag == "i") return Mark::em;
  if (tag == "code") return Mark::code;
  if (tag == "sub") return Mark::sub;
  if (tag == "sup") return Mark::sup;
  if (tag == "a") return Mark::link;
  return std::nullopt;
}

void start_line(RichText& text) {
  while (text.text.ends_with(' ')) text.text.pop_back();
  if (!text.text.empty() && !text.text.ends_with('\n')) text.text += '\n';
}

}  // namespace

bool has_class(const pugi::xml_node& element, std::string_view css_class) {
  return holds(words_of(element.attribute("class").value()), css_class);
}

bool is_inline(const pugi::xml_node& element) {
  const std::string_view tag = element.name();
  return mark_of(tag) || tag == "span" || tag == "br" || tag == "abbr" || tag == "time";
}

bool is_left_out(const pugi::xml_node& node) {
  const std::string_view tag = node.name();
  if (tag == "script" || tag == "style" || tag == "template") return true;
  return has_class(node, "screen-only") || has_class(node, "on-screen");
}

void MarkupRules::unknown(const std::string& what) const {
  if (unknown_ == UnknownMarkup::refuse) {
    throw std::invalid_argument("the PDF of the note has no form for " + what);
  }
}

void MarkupRules::check_classes(const pugi::xml_node& element) const {
  for (const std::string_view word : words_of(element.attribute("class").value())) {
    if (!holds(known_classes, word)) {
      unknown(fmt::format("class \"{}\" of <{}>", word, element.name()));
    }
  }
}

void append_text(RichText& to, std::string_view characters) {
  for (const char c : viz::valid_utf8(characters)) {
    if (!is_space(c)) {
      to.text += c;
    } else if (!to.text.empty() && !to.text.ends_with(' ') && !to.text.ends_with('\n')) {
      to.text += ' ';
    }
  }
}

void append_inline(RichText& to, const pugi::xml_node& node, const MarkupRules& rules) {
  if (node.type() == pugi::node_pcdata || node.type() == pugi::node_cdata) {
    append_text(to, node.value());
    return;
  }
  if (node.type() != pugi::node_element || is_left_out(node)) return;
  rules.check_classes(node);
  const std::string_view tag = node.name();
  const bool on_own_line = tag == "p" || tag == "div" || tag == "li" || tag == "ul" || tag == "ol";
  if (!is_inline(node) && !on_own_line) rules.unknown(fmt::format("<{}> in a line of text", tag));
  if (tag == "br") {
    to.text += '\n';
    return;
  }
  if (on_own_line) start_line(to);
  const std::size_t start = to.text.size();
  for (const pugi::xml_node& child : node.children()) append_inline(to, child, rules);
  if (const std::optional<Mark> mark = mark_of(tag); mark && to.text.size() > start) {
    to.ranges.push_back(
        {start, to.text.size(), *mark, mark == Mark::link ? node.attribute("href").value() : ""});
  }
  if (on_own_line) start_line(to);
}

void trim(RichText& text) {
  const std::size_t last = text.text.find_last_not_of(" \n");
  text.text.resize(last == std::string::npos ? 0 : last + 1);
  const std::size_t first = std::min(text.text.find_first_not_of(" \n"), text.text.size());
  text.text.erase(0, first);
  const auto moved = [&](std::size_t at) {
    return std::min(at < first ? 0 : at - first, text.text.size());
  };
  for (MarkedRange& range : text.ranges) {
    range.from = moved(range.from);
    range.to = moved(range.to);
  }
}

std::string taken_number(pugi::xml_node& element) {
  for (const pugi::xml_node& child : element.children("span")) {
    if (!has_class(child, "number")) continue;
    std::string number = viz::valid_utf8(child.text().get());
    element.remove_child(child);
    return number;
  }
  return "";
}

RichText inline_text(const pugi::xml_node& element, const MarkupRules& rules) {
  RichText text;
  for (const pugi::xml_node& child : element.children()) append_inline(text, child, rules);
  trim(text);
  return text;
}

}  // namespace deadshore::io
