#include "viz/wall/load_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace deadshore::viz {
namespace {

constexpr double arrow_length = 13.0;
constexpr double point_arrow_length = 20.0;
constexpr double label_height = 11.0;
constexpr double row_pitch = arrow_length + label_height;
// A long name loses its middle, never the values after it.
const TextStyle label_style{.size = 7.5, .width = 260.0, .overflow = Overflow::cut_middle};

/// Whether two loads would be drawn on each other.
bool meet(const solver::Job& job, const solver::LineLoad& a, const solver::LineLoad& b) {
  const mesh::Interval both{std::max(a.x.from, b.x.from), std::min(a.x.to, b.x.to)};
  if (both.to <= both.from) return false;
  const double x = both.middle();
  return std::abs(level_at(job, a, x) - level_at(job, b, x)) < 1.0;
}

/// A point load's arrow starts above the rows of line loads that it passes through.
double point_tail(const solver::Job& job, const solver::PointLoad& load,
                  const std::vector<double>& lifts) {
  double tail = point_arrow_length;
  for (std::size_t i = 0; i < job.line_loads.size(); ++i) {
    const solver::LineLoad& row = job.line_loads[i];
    const double level = level_at(job, row, load.x);
    if (std::abs(level - load.level) < 1.0 && row.x.contains(load.x))
      tail = std::max(tail, lifts[i] + row_pitch + point_arrow_length - arrow_length);
  }
  return tail;
}

std::string values(double dead, double imposed, double unit, const std::string& suffix) {
  const auto number = [unit](double value) {
    const double tenths = value / unit * 10.0;
    const bool exact = std::abs(tenths - std::round(tenths)) < 1e-6;
    return fmt::format("{:.{}f}", value / unit, exact ? 1 : 2);
  };
  const std::string first = number(dead);
  const std::string second = number(imposed);
  if (imposed == 0.0) return first + " " + suffix + " dead";
  if (dead == 0.0) return second + " " + suffix + " imposed";
  return first + " + " + second + " " + suffix;
}

/// The stretch of the load's level from end to end, with both sides of every corner of the top.
std::vector<double> corners_along(const solver::Job& job, const solver::LineLoad& load) {
  std::vector<double> corners{load.x.from};
  constexpr double beside = 1e-3;
  for (const mesh::Point& corner : job.wall.top)
    if (load.follows_top && corner.x > load.x.from && corner.x < load.x.to)
      corners.insert(corners.end(), {corner.x - beside, corner.x + beside});
  corners.push_back(load.x.to);
  std::sort(corners.begin(), corners.end());
  return corners;
}

/// Keeps labels off what lies down to `depth` under a line, in steps where it slopes.
void take_strip(LabelRoom& room, PagePoint from, PagePoint to, double depth) {
  const int steps = 1 + static_cast<int>(std::abs(to.y - from.y) / 4.0);
  for (int i = 0; i < steps; ++i) {
    const double a = static_cast<double>(i) / steps;
    const double b = static_cast<double>(i + 1) / steps;
    const double y_a = from.y + a * (to.y - from.y);
    const double y_b = from.y + b * (to.y - from.y);
    room.take({from.x + a * (to.x - from.x), std::min(y_a, y_b), from.x + b * (to.x - from.x),
               std::max(y_a, y_b) + depth});
  }
}

void draw_row(Canvas& canvas, const WallView& view, const solver::Job& job,
              const solver::LineLoad& load, double lift, LabelRoom& room) {
  const auto height = [&](double x) { return view.down(level_at(job, load, x)) - lift; };
  const double length = view.scale * load.x.length();
  const int gaps = std::max(1, static_cast<int>(std::lround(length / 13.0)));
  for (int i = 0; i <= gaps; ++i) {
    const double x = load.x.from + load.x.length() * i / gaps;
    const double tip = height(std::clamp(x, load.x.from + 1e-3, load.x.to - 1e-3));
    canvas.arrow({view.across(x), tip - arrow_length}, {view.across(x), tip - 0.8},
                 line_load_pen());
  }
  const std::vector<double> corners = corners_along(job, load);
  for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
    const PagePoint from{view.across(corners[i]), height(corners[i]) - arrow_length};
    const PagePoint to{view.across(corners[i + 1]), height(corners[i + 1]) - arrow_length};
    canvas.line(from, to, {.colour = ink, .width = 0.9});
    take_strip(room, from, to, arrow_length);
  }
}

double top_of_row(const WallView& view, const solver::Job& job, const solver::LineLoad& load,
                  double lift) {
  const double x = std::clamp(load.x.middle(), load.x.from + 1e-3, load.x.to - 1e-3);
  return view.down(level_at(job, load, x)) - lift - arrow_length;
}

/// Over `foot`; else along the row, under the row, anywhere near; at last over `foot` all the same.
void write_label(Canvas& canvas, LabelRoom& room, const std::string& text, PagePoint foot,
                 double reach, double under) {
  const Rect over = plate_box({foot.x, foot.y - 0.5 * label_height}, text, label_style);
  const Rect below = plate_box({foot.x, foot.y + under + 0.5 * label_height}, text, label_style);
  std::vector<Rect> places;
  for (const Rect& start : {over, below}) {
    places.push_back(start);
    for (double aside = 10.0; aside < reach; aside += 10.0)
      for (const double dx : {-aside, aside})
        places.push_back({start.left + dx, start.top, start.right + dx, start.bottom});
  }
  const auto near = boxes_around(over, {12.0, 4.0}, 12);
  places.insert(places.end(), near.begin(), near.end());
  if (!draw_plate(canvas, room, text, label_style, places))
    canvas.text(over.middle(), text, label_style, {});
}

}  // namespace

double level_at(const solver::Job& job, const solver::LineLoad& load, double x) {
  return load.follows_top ? job.wall.top_at(x) : load.level;
}

Pen line_load_pen() {
  return {.colour = ink, .width = 0.6};
}
Pen point_load_pen() {
  return {.colour = ink, .width = 1.5};
}

std::vector<double> row_lifts(const solver::Job& job, double pitch) {
  std::vector<double> lifts;
  for (std::size_t i = 0; i < job.line_loads.size(); ++i) {
    double lift = 0.0;
    for (std::size_t j = 0; j < i; ++j)
      if (meet(job, job.line_loads[i], job.line_loads[j])) lift = std::max(lift, lifts[j] + pitch);
    lifts.push_back(lift);
  }
  return lifts;
}

double room_for_loads(const solver::Job& job) {
  const std::vector<double> lifts = row_lifts(job, row_pitch);
  double room = 0.0;
  for (const double lift : lifts) room = std::max(room, lift + row_pitch);
  for (const solver::PointLoad& load : job.point_loads)
    room = std::max(room, point_tail(job, load, lifts) + label_height);
  return room + 2.0;
}

void draw_loads(Canvas& canvas, const WallView& view, const solver::Job& job, LabelRoom& room) {
  // Beside the wall stand its dimensions.
  constexpr double far = 1e4;
  room.take({view.across(job.wall.length), -far, far, far});
  room.take({-far, -far, view.across(0.0), far});
  for (std::size_t i = 0; i + 1 < job.wall.top.size(); ++i) {
    const mesh::Point& from = job.wall.top[i];
    const mesh::Point& to = job.wall.top[i + 1];
    take_strip(room, {view.across(from.x), view.down(from.y)}, {view.across(to.x), view.down(to.y)},
               1.0);
  }
  const std::vector<double> lifts = row_lifts(job, row_pitch);
  for (std::size_t i = 0; i < job.line_loads.size(); ++i)
    draw_row(canvas, view, job, job.line_loads[i], lifts[i], room);
  for (const solver::PointLoad& load : job.point_loads) {
    const double x = view.across(load.x);
    const double tip = view.down(load.level);
    const double tail = tip - point_tail(job, load, lifts);
    canvas.line({view.across(load.span().from), tip}, {view.across(load.span().to), tip},
                {.colour = ink, .width = 2.0});
    canvas.arrow({x, tail}, {x, tip - 1.0}, point_load_pen());
    room.take({x - 4.0, tail, x + 4.0, tip});
  }
  for (std::size_t i = 0; i < job.line_loads.size(); ++i) {
    const solver::LineLoad& load = job.line_loads[i];
    write_label(canvas, room, load.name + "  " + values(load.dead, load.imposed, 1.0, "kN/m"),
                {view.across(load.x.middle()), top_of_row(view, job, load, lifts[i]) - 0.5},
                0.4 * view.scale * load.x.length(), arrow_length + 1.5);
  }
  for (const solver::PointLoad& load : job.point_loads)
    write_label(canvas, room, load.name + "  " + values(load.dead, load.imposed, 1000.0, "kN"),
                {view.across(load.x), view.down(load.level) - point_tail(job, load, lifts) - 0.5},
                60.0, point_tail(job, load, lifts) + 2.0);
}

}  // namespace deadshore::viz
