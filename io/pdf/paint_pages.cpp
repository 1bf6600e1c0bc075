#include "io/pdf/measured_text.h"
#include "io/pdf/pages.h"
#include "viz/page/canvas.h"

#include <cairo-pdf.h>
#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace deadshore::io {
namespace {

constexpr double foot_size = 7.5;

/// Shade and bar; in grey print an alarm has one broad bar, a warning two thin ones.
void paint_frame(const Ink& ink, FrameDress dress, const viz::Rect& box) {
  const auto bar = [&](viz::Colour colour, double from, double to) {
    ink.fill({box.left + from, box.top, box.left + to, box.bottom}, colour);
  };
  switch (dress) {
    case FrameDress::summary:
      viz::Canvas(ink.context)
          .outline(viz::Rect{box.left + 0.75, box.top, box.right - 0.75, box.bottom},
                   viz::Pen{paper::ink, 1.5});
      break;
    case FrameDress::alarm:
      ink.fill(box, paper::alarm_shade);
      bar(paper::alarm, 0.0, paper::bar_width);
      break;
    case FrameDress::warning:
      ink.fill(box, paper::warning_shade);
      bar(paper::warning, 0.0, 1.3);
      bar(paper::warning, paper::bar_width - 1.3, paper::bar_width);
      break;
    case FrameDress::code:
      ink.fill(box, paper::shade);
      break;
  }
}

class PagePainter {
 public:
  PagePainter(const Flow& flow, const RunningFoot& foot, PangoContext* fonts, const Ink& ink)
      : flow_(&flow), foot_(&foot), fonts_(fonts), ink_(ink) {}

  void paint(const NotePage& page, std::size_t number) const {
    const paper::Margins& margins =
        page.landscape ? paper::landscape_margins : paper::portrait_margins;
    const viz::PagePoint origin{margins.side, margins.top};
    paint_frames(page, origin);
    for (const PlacedStrip& placed : page.strips) {
      const viz::PagePoint at{origin.x, origin.y + placed.top};
      for (const std::string& id : placed.strip->ids) ink_.destination(id, at.x, at.y);
      if (placed.strip->paint) placed.strip->paint(ink_, at);
    }
    paint_foot(page.landscape, number);
  }

 private:
  /// A frame about one strip; where it comes from the page before or runs on to the next it stands
  /// off a little.
  [[nodiscard]] viz::Rect box_of(const Frame& frame, const PlacedStrip& placed,
                                 viz::PagePoint origin) const {
    constexpr double off = 5.0;
    const double left = origin.x + frame.left;
    const double top = origin.y + placed.top;
    const bool first = placed.strip == &flow_->strips[frame.first];
    const bool last = placed.strip == &flow_->strips[frame.last];
    return {left, top - (first ? 0.0 : off), left + frame.width,
            top + placed.strip->height + (last ? 0.0 : off)};
  }

  /// Outer frames first, so that inner ones lie on them.
  void paint_frames(const NotePage& page, viz::PagePoint origin) const {
    std::map<std::size_t, viz::Rect> boxes;
    for (const PlacedStrip& placed : page.strips) {
      for (const std::size_t frame : placed.strip->frames) {
        const viz::Rect box = box_of(flow_->frames[frame], placed, origin);
        const auto [found, fresh] = boxes.try_emplace(frame, box);
        if (!fresh) found->second.bottom = box.bottom;
      }
    }
    for (const auto& [frame, box] : boxes) paint_frame(ink_, flow_->frames[frame].dress, box);
  }

  void paint_foot(bool landscape, std::size_t number) const {
    const paper::Margins& margins = landscape ? paper::landscape_margins : paper::portrait_margins;
    const double width = (landscape ? paper::long_side : paper::short_side) - 2.0 * margins.side;
    const double top =
        (landscape ? paper::short_side : paper::long_side) - 12.0 * paper::millimetre;
    const TypeFace face{foot_size, paper::faint};
    const MeasuredText page(fonts_, fmt::format("page {} / {}", number, ink_.index->pages), face);
    const MeasuredText program(fonts_, "deadshore " DEADSHORE_VERSION, face);
    const std::string named = foot_->revision.empty() ? foot_->title
                                                      : fmt::format("Revision {} \u00b7 {}",
                                                                    foot_->revision, foot_->title);
    MeasuredText title(fonts_, named, face);
    const double gap = 14.0;
    title.cut(width - page.natural_width() - program.natural_width() - 2.0 * gap);
    ink_.fill({margins.side, top - 3.0, margins.side + width, top - 2.5}, paper::line);
    title.draw_line(ink_, 0, margins.side, top);
    const double right = margins.side + width - page.natural_width();
    program.draw_line(ink_, 0, right - gap - program.natural_width(), top);
    page.draw_line(ink_, 0, right, top);
  }

  const Flow* flow_;
  const RunningFoot* foot_;
  PangoContext* fonts_;
  Ink ink_;
};

PageIndex index_of(const std::vector<NotePage>& pages) {
  PageIndex index;
  index.pages = pages.size();
  for (std::size_t page = 0; page < pages.size(); ++page) {
    for (const PlacedStrip& placed : pages[page].strips) {
      for (const std::string& id : placed.strip->ids) index.page_of.try_emplace(id, page + 1);
    }
  }
  return index;
}

void add_bookmarks(cairo_surface_t* surface, const Flow& flow, const Ink& ink) {
  std::vector<int> open(1, CAIRO_PDF_OUTLINE_ROOT);
  for (const Bookmark& bookmark : flow.bookmarks) {
    const auto depth = std::min(static_cast<std::size_t>(bookmark.depth), open.size() - 1);
    open.resize(depth + 1);
    const std::string target = ink.link_attributes("#" + bookmark.id);
    if (target.empty()) continue;
    open.push_back(cairo_pdf_surface_add_outline(surface, open.back(), bookmark.text.c_str(),
                                                 target.c_str(), cairo_pdf_outline_flags_t{}));
  }
}

}  // namespace

std::string paint_pages(const Flow& flow, const std::vector<NotePage>& pages,
                        const RunningFoot& foot, PangoContext* fonts) {
  std::string bytes;
  const PageIndex index = index_of(pages);
  const viz::Owned<cairo_surface_t> surface =
      viz::start_pdf(bytes, {paper::short_side, paper::long_side});
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, foot.title.c_str());
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATOR,
                                 "deadshore " DEADSHORE_VERSION);
  const viz::Owned<cairo_t> context(cairo_create(surface.get()));
  const Ink ink{context.get(), &index};
  const PagePainter painter(flow, foot, fonts, ink);
  for (std::size_t page = 0; page < pages.size(); ++page) {
    const bool landscape = pages[page].landscape;
    cairo_pdf_surface_set_size(surface.get(), landscape ? paper::long_side : paper::short_side,
                               landscape ? paper::short_side : paper::long_side);
    painter.paint(pages[page], page + 1);
    cairo_show_page(context.get());
  }
  add_bookmarks(surface.get(), flow, ink);
  viz::require_success(cairo_status(context.get()));
  cairo_surface_finish(surface.get());
  viz::require_success(cairo_surface_status(surface.get()));
  return bytes;
}

}  // namespace deadshore::io
