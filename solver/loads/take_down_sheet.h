#pragma once

#include "solver/loads/take_down.h"

#include <string>

/// How the parts of a house write their lines of the take-down.
namespace deadshore::solver {

/// How much of something goes to the wall: `quantity` x `share`, as `working` says in words.
struct Amount {
  Measure measure = Measure::area;
  double quantity = 0.0;  ///< mm2, mm3 or a number
  double share = 1.0;     ///< that the wall takes, 0 to 1
  std::string working;    ///< "3.8 m x 5.2 m x 1/2"
};

/// The sheet of a take-down: element after element, line after line.
class TakeDownSheet {
 public:
  /// Begins an element: the lines that follow are added up in the sums of `load`.
  void begin(TakenDown load);

  /// Adds a line. Nothing is written where the amount is 0.
  /// \param unit_load N/mm2, N/mm3 or N
  /// \param source of the unit load
  void add(const std::string& item, Action action, const Amount& amount, double unit_load,
           const std::string& source);

  /// Adds a line for each layer.
  void add(const BuildUp& build_up, const Amount& amount);

  /// Adds a line where the unit load is above 0.
  void add_if_any(const std::string& item, Action action, const Amount& amount, double unit_load,
                  const std::string& source);

  [[nodiscard]] const TakeDown& result() const { return taken_; }

 private:
  TakeDown taken_;
};

/// "3.8 m".
[[nodiscard]] std::string in_metres(double length);

/// A share as it follows an amount: " x 1/2", or nothing for the whole.
[[nodiscard]] std::string times(double share);

/// The stretch of an axis of this length about its middle, mm.
[[nodiscard]] mesh::Interval centred(double middle, double length);

/// Area of a wall's face without its openings: "5.2 m x 2.4 m - 1.6 m2".
/// \param length mm
/// \param height mm
/// \param openings mm2
[[nodiscard]] Amount face_of_wall(double length, double height, double openings);

// Each part of a house writes its lines. What stands on a floor is given that floor, by whose span
// it goes to the wall.
void take_down(const Floor& floor, TakeDownSheet& sheet);
void take_down(const Partition& partition, const Floor& floor, TakeDownSheet& sheet);
void take_down(const Contents& contents, const Floor& floor, TakeDownSheet& sheet);
/// With its purlins.
void take_down(const Roof& roof, TakeDownSheet& sheet);
void take_down(const UpperWall& wall, TakeDownSheet& sheet);
void take_down(const Chimney& chimney, TakeDownSheet& sheet);

}  // namespace deadshore::solver
