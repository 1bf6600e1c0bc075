#pragma once

#include "viz/view/shown_field.h"
#include "viz/view/shown_result.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What is shown, as a plain value, and how keys change it. Knows no window.
namespace deadshore::viz {

/// What there is to choose from.
struct ViewChoices {
  std::vector<std::string> stages;
  std::vector<std::string> analyses;
  std::vector<std::string> fields;
  double magnification = 0.0;  ///< of movements, to begin with
};

struct ViewState {
  std::size_t stage = 0;
  std::size_t analysis = 0;
  std::optional<std::size_t> field = 0;  ///< none: plain masonry
  double magnification = 0.0;            ///< of movements; 0 draws the wall as built
  bool mesh_lines = false;
  bool reactions = true;  ///< their arrows and figures
  bool help = false;

  friend bool operator==(const ViewState&, const ViewState&) = default;
};

/// What only the window can do.
enum class WindowTask { none, reset_view, front_view, save_picture, quit };

struct AfterKey {
  ViewState state;
  WindowTask task = WindowTask::none;

  friend bool operator==(const AfterKey&, const AfterKey&) = default;
};

/// The first stage, the last analysis (cracked, where it is there) and the first field.
[[nodiscard]] ViewState first_view(const ViewChoices& choices);

/// After a key, by its X11 name ("Right", "plus", "a"). None where the key means nothing; a step
/// past either end of the stages stays there.
[[nodiscard]] std::optional<AfterKey> after_key(const ViewState& state, const ViewChoices& choices,
                                                std::string_view key);

/// The next magnification up or down: 0, then 1, 2, 5, 10, ... 100000.
[[nodiscard]] double magnified_more(double magnification);
[[nodiscard]] double magnified_less(double magnification);

/// The magnification of that row at which a movement of `largest` mm shows as at most a thirtieth
/// of `size`.
[[nodiscard]] double fitting_magnification(double largest, double size);

/// The one whose name begins with `name`, case aside, if just one does or one is `name` itself.
[[nodiscard]] std::optional<std::size_t> find_name(const std::vector<std::string>& names,
                                                   std::string_view name);

/// Every key and what it does, a line each, for the help on the screen.
[[nodiscard]] std::vector<std::string> key_help();

/// "stage 5 of 14 (cut), cracked, displacement y [mm], movements 200 x"
[[nodiscard]] std::string in_words(const ViewState& state, const ViewChoices& choices);

/// What a folder of results offers to choose from; movements are magnified to be seen at its
/// largest.
[[nodiscard]] ViewChoices choices_of(const ShownResult& result,
                                     const std::vector<ShownField>& fields);

}  // namespace deadshore::viz
