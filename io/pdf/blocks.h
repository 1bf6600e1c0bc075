#pragma once

#include "io/pdf/rich_text.h"

#include <string>
#include <variant>
#include <vector>

/// The design note as a list of blocks: what its page says, without its markup.
namespace deadshore::io {

struct Block;

struct HeadingBlock {
  int level = 1;       ///< 1 for the title, 2 for a chapter, 3 inside one
  std::string number;  ///< of a chapter; empty for none
  RichText text;
};

enum class ParagraphTone { plain, small, kind };

struct ParagraphBlock {
  RichText text;
  ParagraphTone tone = ParagraphTone::plain;
};

struct ListBlock {
  bool numbered = false;
  std::vector<std::vector<Block>> items;
};

struct GridCell {
  RichText text;
  int columns = 1;  ///< how many it spans
  bool figures = false;
  bool blank = false;  ///< to be filled in by hand
  bool label = false;  ///< says what its row or the cell beside it is
};
struct GridRow {
  std::vector<GridCell> cells;
  bool starts_group = false;  ///< first of a part of the table that had better stay on one page
  bool heading = false;
  bool total = false;
  bool fails = false;
  bool unverified = false;
  bool worked = false;   ///< its working follows
  bool working = false;  ///< how the row above comes about
};
struct GridBlock {
  std::string id;
  RichText caption;
  std::vector<GridRow> head;
  std::vector<GridRow> rows;
};

struct FigureBlock {
  std::string name;  ///< of a viz::Figure
  RichText caption;
};

struct CodeBlock {
  std::string text;
};

/// `none` has no frame to be seen; its blocks only hold together.
enum class FrameKind { none, summary, alarm, warning, good };

struct FramedBlock {
  FrameKind kind = FrameKind::summary;
  std::vector<Block> blocks;
};

struct ContentsBlock {
  struct Entry {
    int depth = 0;
    std::string number;
    std::string text;
    std::string target;  ///< an id
  };
  std::vector<Entry> entries;
};

struct Block {
  std::vector<std::string> ids;  ///< what links to it say
  std::variant<HeadingBlock, ParagraphBlock, ListBlock, GridBlock, FigureBlock, CodeBlock,
               FramedBlock, ContentsBlock>
      content;
};

struct NoteDocument {
  std::string title;     ///< of the job
  std::string revision;  ///< empty where the note has none
  std::vector<Block> blocks;
};

}  // namespace deadshore::io
