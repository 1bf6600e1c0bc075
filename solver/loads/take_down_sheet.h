#pragma once

#include "solver/loads/take_down.h"

#include <string>

/// How the parts of a house write their lines of the take-down.
namespace deadshore::solver {

/// How much of something goes to the wall: `quantity` x `share`, as `working` says in words.
struct Amount {
  Measure measure = Measure::area;
  double quantity = 0.0;  ///< mm2, mm3 or a number
  double share = 1.0;
  std::string working;
};

/// The sheet of a take-down: element after element, line after line.
class TakeDownSheet {
 public:
  /// The lines that follow are those of `load`, whose sums they make up.
  void begin(TakenDown load);

  /// One line; `unit_load` in N/mm2, N/mm3 or N. Nothing is written where the amount is 0.
  void add(const std::string& item, Action action, const Amount& amount, double unit_load,
           const std::string& source);

  /// A line for each layer.
  void add(const BuildUp& build_up, const Amount& amount);

  /// The same as `add` where there is a load, else nothing.
  void add_if_any(const std::string& item, Action action, const Amount& amount, double unit_load,
                  const std::string& source);

  [[nodiscard]] const TakeDown& result() const { return taken_; }

 private:
  TakeDown taken_;
};

/// "3.8 m".
[[nodiscard]] std::string in_metres(double length);

/// " x 1/2", or nothing for the whole.
[[nodiscard]] std::string times(double share);

/// Its bearing on the wall.
[[nodiscard]] mesh::Interval centred(double middle, double length);

/// A wall's face without its openings (mm2): "5.2 m x 2.4 m - 1.6 m2".
[[nodiscard]] Amount face_of_wall(double length, double height, double openings);

void take_down(const Floor& floor, TakeDownSheet& sheet);
/// `floor` is the one that it stands on.
void take_down(const Partition& partition, const Floor& floor, TakeDownSheet& sheet);
void take_down(const Contents& contents, const Floor& floor, TakeDownSheet& sheet);
/// With its purlins.
void take_down(const Roof& roof, TakeDownSheet& sheet);
void take_down(const UpperWall& wall, TakeDownSheet& sheet);
void take_down(const Chimney& chimney, TakeDownSheet& sheet);

}  // namespace deadshore::solver
