#include "mesh/error.h"
#include "mesh/height_map.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>

namespace deadshore::mesh {
namespace {

constexpr double least_room = 0.3;     // of the nominal height, beside a pin that can be left out
constexpr double least_height = 0.01;  // of the nominal height, between pins that cannot
constexpr double steepest = 1.0;       // rise of a level over its run, between such pins

/// Gathers pins: first those the shape prescribes, which must agree, then those that may give way.
class Pinboard {
 public:
  explicit Pinboard(const WallGrid& grid, HeightPins pins = {})
      : grid_(grid), pins_(std::move(pins)) {
    pins_.upright.resize(grid.x.size());
  }

  /// The next pins belong to `owner`.
  void begin(std::string owner) { pins_.owners.push_back(std::move(owner)); }

  /// Pins the uprights `left` to `right` at `row` to the curve `y`.
  void prescribe(int left, int right, int row, const std::function<double(double)>& y) {
    for (int i = left; i <= right; ++i) {
      Pin pin{row, y(x(i)), owner()};
      if (std::abs(pin.y - level(row)) <= same_place) pin.y = level(row);  // exactly level
      auto& upright = pins_.upright[static_cast<std::size_t>(i)];
      const auto place = std::ranges::lower_bound(upright, row, {}, &Pin::row);
      if (place == upright.end() || place->row != row) {
        upright.insert(place, pin);
      } else if (std::abs(place->y - pin.y) > same_place) {
        refuse(i, *place, pin);
      }
    }
  }

  /// Throws unless the pins so far rise along every upright.
  void check_order() const {
    for (std::size_t i = 0; i < pins_.upright.size(); ++i) {
      const auto& upright = pins_.upright[i];
      for (std::size_t k = 0; k + 1 < upright.size(); ++k) {
        const double nominal = level(upright[k + 1].row) - level(upright[k].row);
        if (upright[k + 1].y - upright[k].y < least_height * nominal) {
          refuse(static_cast<int>(i), upright[k], upright[k + 1]);
        }
      }
    }
  }

  /// Pins the uprights `left` to `right` at `row` to height `y` where there is room. Returns the
  /// stretches of solid wall left out.
  std::vector<Interval> propose(int left, int right, int row, double y) {
    std::vector<Interval> left_out;
    bool before_left_out = false;
    for (int i = left; i <= right; ++i) {
      const bool placed = !bounds_solid(i, row) || place(i, row, y);
      if (!placed) {
        if (!before_left_out) left_out.push_back({x(std::max(left, i - 1)), 0.0});
        left_out.back().to = x(std::min(right, i + 1));
      }
      before_left_out = !placed;
    }
    return left_out;
  }

  [[nodiscard]] HeightPins take() { return std::move(pins_); }

 private:
  [[nodiscard]] int owner() const { return static_cast<int>(pins_.owners.size()) - 1; }
  [[nodiscard]] double x(int i) const { return grid_.x[static_cast<std::size_t>(i)]; }
  [[nodiscard]] double level(int row) const { return grid_.level[static_cast<std::size_t>(row)]; }

  [[nodiscard]] const Pin* pin_at(int i, int row) const {
    const auto& upright = pins_.upright[static_cast<std::size_t>(i)];
    const auto place = std::ranges::lower_bound(upright, row, {}, &Pin::row);
    return place == upright.end() || place->row != row ? nullptr : &*place;
  }

  /// Pins one node if there is room; true if it then is pinned at `y`.
  bool place(int i, int row, double y) {
    if (const Pin* pin = pin_at(i, row)) return std::abs(pin->y - y) <= same_place;
    if (!has_room(i, row, y) || !is_gentle(i, row, y)) return false;
    auto& upright = pins_.upright[static_cast<std::size_t>(i)];
    upright.insert(std::ranges::lower_bound(upright, row, {}, &Pin::row), {row, y, owner()});
    return true;
  }

  [[nodiscard]] bool bounds_solid(int i, int row) const {
    return grid_.solid(i - 1, row - 1) || grid_.solid(i, row - 1) || grid_.solid(i - 1, row) ||
           grid_.solid(i, row);
  }

  /// True if a pin there leaves the rows up to the next pins a fair part of their height.
  [[nodiscard]] bool has_room(int i, int row, double y) const {
    const auto& upright = pins_.upright[static_cast<std::size_t>(i)];
    const auto above = std::ranges::lower_bound(upright, row, {}, &Pin::row);
    if (above == upright.end() || above == upright.begin()) return false;
    const Pin& below = *(above - 1);
    return above->y - y >= least_room * (level(above->row) - level(row)) &&
           y - below.y >= least_room * (level(row) - level(below.row));
  }

  /// True if the level need not climb steeply to pins at other heights in the same row.
  [[nodiscard]] bool is_gentle(int i, int row, double y) const {
    for (int k = 0; k <= grid_.columns(); ++k) {
      const Pin* pin = pin_at(k, row);
      if (pin != nullptr && std::abs(pin->y - y) > steepest * std::abs(x(k) - x(i))) return false;
    }
    return true;
  }

  [[noreturn]] void refuse(int i, const Pin& one, const Pin& other) const {
    throw GeometryError(fmt::format(
        "no grid fits the wall at x = {:.3f} m, where {} (y = {:.3f} m) and {} (y = {:.3f} m) "
        "cross, meet or lie out of order; move one of them",
        x(i) / 1000.0, pins_.owners[static_cast<std::size_t>(one.owner)], one.y / 1000.0,
        pins_.owners[static_cast<std::size_t>(other.owner)], other.y / 1000.0));
  }

  const WallGrid& grid_;
  HeightPins pins_;
};

}  // namespace

HeightPins pin_shape(const PlacedWall& wall, const WallGrid& grid) {
  Pinboard board(grid);
  const auto flat = [](double y) { return [y](double) { return y; }; };
  const auto row_of = [&grid](double level) { return nearest_index(grid.level, level); };
  const auto upright_of = [&grid](double x) { return nearest_index(grid.x, x); };

  board.begin("the base");
  board.prescribe(0, grid.columns(), 0, flat(0.0));
  if (grid.cut.right > grid.cut.left && grid.cut.top > 0) {
    board.begin("the soffit");
    board.prescribe(grid.cut.left, grid.cut.right, grid.cut.top, flat(wall.cut.soffit));
  }
  for (const TopStretch& stretch : wall.top) {
    board.begin("the top of the wall");
    board.prescribe(upright_of(stretch.x().from), upright_of(stretch.x().to),
                    row_of(stretch.level()), [&](double x) { return stretch.y_at(x); });
  }
  for (std::size_t k = 0; k < wall.openings.size(); ++k) {
    const Opening& shape = wall.openings[k].shape;
    const Block& block = grid.openings[k];
    board.begin(fmt::format("the sill of opening \"{}\"", shape.name));
    board.prescribe(block.left, block.right, block.bottom, flat(shape.sill));
    if (wall.openings[k].reaches_top) continue;
    board.begin(fmt::format("the head of opening \"{}\"", shape.name));
    board.prescribe(block.left, block.right, block.top, [&](double x) { return shape.head(x); });
  }
  for (const auto& [name, extent, comes_out] : wall.lintels) {
    board.begin(fmt::format("lintel \"{}\"", name));
    for (const double y : {extent.y.from, extent.y.to}) {
      board.prescribe(upright_of(extent.x.from), upright_of(extent.x.to), row_of(y), flat(y));
    }
  }
  for (std::size_t k = 0; k < wall.blocks.size(); ++k) {
    const auto& [group, name, x, y] = wall.blocks[k].shape;
    const Block& block = grid.blocks[k];
    board.begin(fmt::format("\"{}\"", name));
    board.prescribe(block.left, block.right, block.bottom, flat(y.from));
    board.prescribe(block.left, block.right, block.top, flat(y.to));
  }
  board.check_order();
  return board.take();
}

HeightPins pin_level_lines(HeightPins pins, const PlacedWall& wall, const WallGrid& grid,
                           std::vector<std::string>& remarks) {
  Pinboard board(grid, std::move(pins));
  board.begin("the soffit's level");
  board.propose(0, grid.columns(), grid.cut.top, wall.cut.soffit);
  for (const LevelLine& line : wall.lines) {
    if (line.follows_top) continue;
    const int row = nearest_index(grid.level, line.level);
    board.begin(line.name);
    const std::vector<Interval> left_out = board.propose(
        nearest_index(grid.x, line.x.from), nearest_index(grid.x, line.x.to), row, line.level);
    for (const Interval& x : left_out) {
      remarks.push_back(
          fmt::format("Not followed by the mesh from x = {:.3f} to {:.3f} m: the level of "
                      "\"{}\", too near the wall's top or an arch; its load goes to the nearest "
                      "sides there.",
                      x.from / 1000.0, x.to / 1000.0, line.name));
    }
  }
  return board.take();
}

}  // namespace deadshore::mesh
