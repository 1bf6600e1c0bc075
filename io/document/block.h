#pragma once

#include "viz/figures.h"
#include "viz/stages/stage_views.h"

#include <concepts>
#include <cstddef>
#include <string>
#include <utility>
#include <variant>
#include <vector>

/// A document as plain values: what it says, without markup. `document_html` and `document_pdf`
/// set the same values on a page, so a chapter is written once and never escapes anything.
///
/// A chapter is a function from the results to a `Chapter`. It builds blocks and puts them under
/// one another with `+` and `+=`; an empty `Blocks` is nothing:
/// \code
/// Chapter lintels_chapter(const solver::Job& job) {
///   Table lintels{"lintels", "What carries the wall over its openings",
///                 {"Lintel", numeric("Depth mm")}};
///   for (const solver::Lintel& lintel : job.lintels) {
///     lintels.add({lintel.shape.name, millimetres(lintel.shape.depth)});
///   }
///   Blocks rest = lintels;
///   rest += Paragraph{"Elastic; see " + link_to("#wall", "the wall") + ".", Tone::small};
///   if (job.lintels.empty()) rest += callout(Severity::warning, "None.", "Look again.");
///   return {"lintels", "Lintels", Paragraph{"As given."}, rest};
/// }
/// \endcode
/// It joins the note by its declaration in io/note/chapters.h and a line in io/note/note.cpp.
namespace deadshore::io {

/// How a piece of text is set apart.
enum class Mark {
  plain,
  strong,
  emphasis,
  code,
  sub,   ///< below the line
  sup,   ///< above it
  link,  ///< to another place
  hold   ///< a hold point, with a box before it to be ticked by hand
};

/// A piece of text, all of it marked alike. UTF-8; white space counts as in HTML.
struct Run {
  std::string text;
  Mark mark = Mark::plain;
  std::string target = {};  ///< of a link: "#id" in the document, or an address
};

/// A line of text. Plain strings become one by themselves; `+` puts runs behind one another.
struct Text {
  Text() = default;
  Text(Run run) { runs.push_back(std::move(run)); }
  Text(std::string plain) : Text(Run{std::move(plain)}) {}
  Text(const char* plain) : Text(std::string(plain)) {}

  std::vector<Run> runs;
};
/// One text behind the other.
[[nodiscard]] Text operator+(Text left, const Text& right);
/// Bold words.
[[nodiscard]] Text strong(std::string words);
/// Words that lead to `target`: "#id" in the document, or an address.
[[nodiscard]] Text link_to(std::string target, std::string words);

/// A heading.
struct Heading {
  Text text;
  int level = 3;  ///< 1: of the document; 2: of a chapter; 3: in one
};

/// How a paragraph is set.
enum class Tone { plain, small, faint };
/// A paragraph of text.
struct Paragraph {
  Text text;
  Tone tone = Tone::plain;
};

/// A list; nothing is set where there are no items.
struct List {
  std::vector<Text> items;
  bool numbered = false;  ///< else with bullets
};
/// Sentences as a list with bullets.
[[nodiscard]] List bullets(const std::vector<std::string>& sentences);

/// A column of a table: its heading, and how its cells are set.
struct Column {
  Column(std::string words) : heading(std::move(words)) {}
  Column(const char* words) : heading(words) {}

  std::string heading;
  bool numeric = false;  ///< set to the right, and never broken
  bool strong = false;   ///< bold
};
/// A column of numbers.
[[nodiscard]] Column numeric(std::string heading);

/// What a row of a table is.
enum class RowKind {
  plain,
  heading,  ///< one cell: starts a group that had better stay on one page
  total,
  fails,       ///< loud
  unverified,  ///< to be noticed
  working,     ///< one cell: how the row above comes about, smaller, on one page with it
};
/// A row of a table.
struct Row {
  std::vector<Text> cells;  ///< fewer than columns: the last cell spans the rest
  RowKind kind = RowKind::plain;
};
/// A table.
struct Table {
  std::string id;       ///< unique in the document
  std::string caption;  ///< above the table; none where empty
  std::vector<Column> columns;
  std::vector<Row> rows = {};  ///< from the top down
  bool dense = false;          ///< smaller letters

  /// Adds a row.
  void add(std::vector<Text> cells, RowKind kind = RowKind::plain);

  /// Whether the row after this one is its working.
  [[nodiscard]] bool is_worked(std::size_t row) const;
  /// Whether rows from this one on had better stay on one page.
  [[nodiscard]] bool starts_group(std::size_t row) const;
};

/// Labels with what is filled in; an entry without text is a blank for the pen.
struct Form {
  /// A label with what is filled in.
  struct Entry {
    std::string label;
    std::string text;
    int columns = 1;  ///< that the text is wide
  };
  std::string id;
  std::vector<std::vector<Entry>> rows;  ///< none of them empty
};

/// A drawn figure with its number and caption.
struct Figure {
  const viz::Figure* drawn = nullptr;  ///< not owned; must outlive the document
  int number = 0;
};
/// Its number and caption: "Figure 3. What it shows."
[[nodiscard]] Text caption_of(const Figure& figure);

/// A file as it is, every space of it.
struct Listing {
  std::string text;
};

/// All stages one over another, moved through by a slider: for the screen alone.
struct StageViewer {
  viz::StageViews views;
  std::vector<std::string> stages;
  std::vector<std::string> models;  ///< of masonry, at most one a stage and view
  std::string data;                 ///< JSON, as stage_viewer.js takes it
};

struct Callout;
struct Beside;
/// The kinds of block; one more is added here, in `Block` and in what sets documents on a page.
template <class Kind>
concept BlockKind = std::same_as<Kind, Heading> || std::same_as<Kind, Paragraph> ||
    std::same_as<Kind, List> || std::same_as<Kind, Table> || std::same_as<Kind, Form> ||
    std::same_as<Kind, Figure> || std::same_as<Kind, Listing> || std::same_as<Kind, StageViewer> ||
    std::same_as<Kind, Callout> || std::same_as<Kind, Beside>;

struct Block;

/// Blocks one under another; a single block becomes one by itself.
class Blocks {
 public:
  Blocks() = default;
  /// A single block.
  template <BlockKind Kind>
  Blocks(Kind block);

  /// Puts more blocks under these.
  Blocks& operator+=(Blocks more);
  [[nodiscard]] bool empty() const { return blocks_.empty(); }
  [[nodiscard]] auto begin() const { return blocks_.begin(); }
  [[nodiscard]] auto end() const { return blocks_.end(); }

 private:
  std::vector<Block> blocks_;
};
/// The first blocks with the second under them.
[[nodiscard]] Blocks operator+(Blocks left, Blocks right);

/// How loud a callout is.
enum class Severity { warning, alarm };

/// What must be seen, in a frame of its colour.
struct Callout {
  Severity severity = Severity::warning;
  Blocks blocks;
};

/// Blocks that stand side by side where the page is wide enough: a table and its figure.
struct Beside {
  Blocks blocks;
};

/// Any one block.
struct Block {
  std::variant<Heading, Paragraph, List, Table, Form, Figure, Listing, StageViewer, Callout, Beside>
      content;
};

template <BlockKind Kind>
Blocks::Blocks(Kind block) {
  blocks_.push_back({std::move(block)});
}

/// A paragraph that opens with a bold phrase, and what may follow it.
[[nodiscard]] Callout callout(Severity severity, std::string bold, const Text& words,
                              const Blocks& more = {});

/// A chapter of a document. One without an id is left out, as a chapter with nothing to say.
struct Chapter {
  std::string id;  ///< what links to it say after the "#"
  std::string heading;
  Blocks opening;  ///< kept on one page with the heading
  Blocks rest = {};

  [[nodiscard]] bool empty() const { return id.empty(); }
};

/// A document: front matter, contents, summary and numbered chapters, in that order.
struct Document {
  std::string title;
  std::string revision;  ///< for the foot of every page; empty for none
  Blocks front;
  Chapter summary;  ///< without a number, in a frame
  Blocks after_summary;
  std::vector<Chapter> chapters;  ///< none of them empty; numbered from 1
};

}  // namespace deadshore::io
