#include "io/pdf/note_reader.h"

#include "io/pdf/grid_reader.h"
#include "io/pdf/markup.h"
#include "viz/page/cairo_parts.h"

#include <fmt/format.h>

#include <optional>
#include <set>
#include <stdexcept>
#include <utility>

namespace deadshore::io {
namespace {

/// What an element without a form of its own does: its children stand for it.
bool is_transparent(std::string_view tag) {
  static const std::set<std::string_view> tags = {"div",     "header", "main",
                                                  "section", "footer", "nav"};
  return tags.contains(tag);
}

std::optional<FrameKind> frame_of(const pugi::xml_node& element) {
  if (has_class(element, "alarm")) return FrameKind::alarm;
  if (has_class(element, "warning")) return FrameKind::warning;
  if (has_class(element, "good")) return FrameKind::good;
  if (has_class(element, "keep")) return FrameKind::none;
  if (std::string_view(element.attribute("id").value()) == "summary") return FrameKind::summary;
  return std::nullopt;
}

void give_id(std::vector<Block>& blocks, const pugi::xml_node& element) {
  const std::string_view id = element.attribute("id").value();
  if (!id.empty() && !blocks.empty()) blocks.front().ids.emplace_back(id);
}

class NoteReader {
 public:
  explicit NoteReader(UnknownMarkup unknown) : rules_(unknown) {}

  [[nodiscard]] std::vector<Block> blocks_in(const pugi::xml_node& parent) {
    std::vector<Block> blocks;
    RichText loose;
    const auto close_loose = [&] {
      trim(loose);
      if (!loose.text.empty()) blocks.push_back({{}, ParagraphBlock{std::move(loose)}});
      loose = {};
    };
    for (const pugi::xml_node& child : parent.children()) {
      if (child.type() != pugi::node_element || is_inline(child)) {
        append_inline(loose, child, rules_);
        continue;
      }
      close_loose();
      if (is_left_out(child)) continue;
      for (Block& block : blocks_of(child)) blocks.push_back(std::move(block));
    }
    close_loose();
    return blocks;
  }

  [[nodiscard]] const MarkupRules& rules() const { return rules_; }

 private:
  [[nodiscard]] std::vector<Block> blocks_of(const pugi::xml_node& element) {
    rules_.check_classes(element);
    std::vector<Block> blocks = bare_blocks_of(element);
    if (const std::optional<FrameKind> kind = frame_of(element)) {
      blocks = {{{}, FramedBlock{*kind, std::move(blocks)}}};
    }
    give_id(blocks, element);
    return blocks;
  }

  [[nodiscard]] std::vector<Block> bare_blocks_of(const pugi::xml_node& element) {
    const std::string_view tag = element.name();
    if (tag == "nav" && std::string_view(element.attribute("id").value()) == "contents") {
      return contents_of(element);
    }
    if (is_transparent(tag)) return blocks_in(element);
    if (tag == "h1" || tag == "h2" || tag == "h3") return {{{}, heading_of(element)}};
    if (tag == "p") return {{{}, paragraph_of(element)}};
    if (tag == "ul" || tag == "ol") return {{{}, list_of(element)}};
    if (tag == "table") return {{{}, grid_of(element, rules_)}};
    if (tag == "figure") return {{{}, figure_of(element)}};
    if (tag == "pre") {
      return {{{}, CodeBlock{viz::valid_utf8(element.text().get())}}};
    }
    rules_.unknown(fmt::format("<{}>", tag));
    return tag == "svg" ? std::vector<Block>() : blocks_in(element);
  }

  [[nodiscard]] HeadingBlock heading_of(pugi::xml_node element) {
    HeadingBlock heading;
    heading.level = element.name()[1] - '0';
    heading.number = taken_number(element);
    heading.text = inline_text(element, rules_);
    return heading;
  }

  [[nodiscard]] ParagraphBlock paragraph_of(const pugi::xml_node& element) {
    const ParagraphTone tone = has_class(element, "small")  ? ParagraphTone::small
                               : has_class(element, "kind") ? ParagraphTone::kind
                                                            : ParagraphTone::plain;
    return {inline_text(element, rules_), tone};
  }

  [[nodiscard]] ListBlock list_of(const pugi::xml_node& element) {
    ListBlock list;
    list.numbered = std::string_view(element.name()) == "ol";
    for (const pugi::xml_node& item : element.children()) {
      if (item.type() != pugi::node_element || is_left_out(item)) continue;
      if (std::string_view(item.name()) != "li") {
        rules_.unknown(fmt::format("<{}> in a list", item.name()));
      }
      std::vector<Block> blocks = blocks_in(item);
      give_id(blocks, item);
      list.items.push_back(std::move(blocks));
    }
    return list;
  }

  [[nodiscard]] FigureBlock figure_of(const pugi::xml_node& element) {
    FigureBlock figure;
    figure.name = element.attribute("data-figure").value();
    if (figure.name.empty()) rules_.unknown("<figure> without data-figure");
    figure.caption = inline_text(element.child("figcaption"), rules_);
    return figure;
  }

  [[nodiscard]] std::vector<Block> contents_of(const pugi::xml_node& element) {
    std::vector<Block> blocks;
    for (const pugi::xml_node& child : element.children()) {
      const std::string_view tag = child.name();
      if (tag == "h2" || tag == "h3")
        blocks.push_back({{}, HeadingBlock{3, "", inline_text(child, rules_)}});
    }
    ContentsBlock contents;
    add_entries(contents, element, 0);
    blocks.push_back({{}, std::move(contents)});
    return blocks;
  }

  /// Lists inside lists are one step deeper.
  void add_entries(ContentsBlock& contents, const pugi::xml_node& element, int depth) {
    for (pugi::xml_node child : element.children()) {
      const std::string_view tag = child.name();
      if (tag == "ul" || tag == "ol") {
        for (pugi::xml_node item : child.children("li")) add_entry(contents, item, depth);
      } else if (tag == "div") {
        add_entries(contents, child, depth);
      } else if (child.type() == pugi::node_element && tag != "h2" && tag != "h3") {
        rules_.unknown(fmt::format("<{}> in the contents", tag));
      }
    }
  }

  void add_entry(ContentsBlock& contents, pugi::xml_node item, int depth) {
    const std::string number = taken_number(item);
    const pugi::xml_node link = item.child("a");
    const std::string_view target = link.attribute("href").value();
    if (!target.starts_with('#')) rules_.unknown("a line of the contents that leads nowhere");
    contents.entries.push_back({depth, number, inline_text(link, rules_).text,
                                std::string(target.substr(target.empty() ? 0 : 1))});
    add_entries_below(contents, item, depth + 1);
  }

  void add_entries_below(ContentsBlock& contents, const pugi::xml_node& item, int depth) {
    for (pugi::xml_node list : item.children()) {
      const std::string_view tag = list.name();
      if (tag != "ul" && tag != "ol") continue;
      for (pugi::xml_node below : list.children("li")) add_entry(contents, below, depth);
    }
  }

  MarkupRules rules_;
};

/// Calls `visit` for each block, and for those inside it after it.
template <class Visit>
void for_each_block(const std::vector<Block>& blocks, const Visit& visit) {
  for (const Block& block : blocks) {
    visit(block);
    if (const auto* framed = std::get_if<FramedBlock>(&block.content)) {
      for_each_block(framed->blocks, visit);
    } else if (const auto* list = std::get_if<ListBlock>(&block.content)) {
      for (const std::vector<Block>& item : list->items) for_each_block(item, visit);
    }
  }
}

/// The lines of the contents must lead to something.
void check_contents(const std::vector<Block>& blocks, const MarkupRules& rules) {
  std::set<std::string> ids;
  for_each_block(blocks,
                 [&](const Block& block) { ids.insert(block.ids.begin(), block.ids.end()); });
  for_each_block(blocks, [&](const Block& block) {
    const auto* contents = std::get_if<ContentsBlock>(&block.content);
    if (contents == nullptr) return;
    for (const ContentsBlock::Entry& entry : contents->entries) {
      if (!ids.contains(entry.target)) {
        rules.unknown(fmt::format("a link to \"{}\", which is not there", entry.target));
      }
    }
  });
}

/// As the title block has it; empty where it is left blank.
std::string revision_in(const pugi::xml_node& body, const MarkupRules& rules) {
  const pugi::xml_node cell =
      body.select_node(".//table[@id='title-block']//th[.='Revision']/following-sibling::td[1]")
          .node();
  return inline_text(cell, rules).text;
}

}  // namespace

NoteDocument read_note(std::string_view note_xhtml, UnknownMarkup unknown) {
  pugi::xml_document page;
  const pugi::xml_parse_result parsed = page.load_buffer(
      note_xhtml.data(), note_xhtml.size(),
      pugi::parse_default | pugi::parse_ws_pcdata | pugi::parse_doctype, pugi::encoding_utf8);
  if (!parsed) {
    throw std::runtime_error(fmt::format("the note is not well-formed at byte {}: {}",
                                         parsed.offset, parsed.description()));
  }
  const pugi::xml_node body = page.child("html").child("body");
  if (!body) throw std::runtime_error("the note has no body");

  NoteReader reader(unknown);
  NoteDocument document;
  document.blocks = reader.blocks_in(body);
  check_contents(document.blocks, reader.rules());
  document.title =
      inline_text(page.child("html").child("head").child("title"), reader.rules()).text;
  document.revision = revision_in(body, reader.rules());
  return document;
}

}  // namespace deadshore::io
