#include "solver/loads/take_down_sheet.h"

#include <fmt/format.h>

namespace deadshore::solver {

namespace {

struct Block {
  double width;
  double depth;
  double height;
};

void add_masonry(const Chimney& chimney, const std::string& item, const Block& block,
                 TakeDownSheet& sheet) {
  const double volume = block.width * block.depth * block.height;
  sheet.add(item, Action::dead,
            {Measure::volume, volume * chimney.solid, chimney.share,
             fmt::format("{} x {} x {}{}{}", in_metres(block.width), in_metres(block.depth),
                         in_metres(block.height), times(chimney.solid), times(chimney.share))},
            chimney.unit_weight, chimney.source);
}

}  // namespace

void take_down(const UpperWall& wall, TakeDownSheet& sheet) {
  sheet.begin({wall.name, "", {}, true, wall.level, wall.follows_top, wall.x});
  sheet.add(wall.build_up, face_of_wall(wall.x.length(), wall.height, wall.openings));
}

void take_down(const Chimney& chimney, TakeDownSheet& sheet) {
  sheet.begin(
      {chimney.name, "", {}, false, chimney.level, false, centred(chimney.x, chimney.width)});
  add_masonry(chimney, "breast", {chimney.width, chimney.projection, chimney.height}, sheet);
  add_masonry(chimney, "stack", {chimney.stack_width, chimney.stack_depth, chimney.stack_height},
              sheet);
}

}  // namespace deadshore::solver
