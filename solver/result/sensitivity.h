#pragma once

#include "solver/job/job.h"
#include "solver/job/supports.h"

#include <optional>
#include <string>
#include <vector>

/// What the reactions depend on that nobody knows well before the wall is opened.
namespace deadshore::solver {

/// What is changed while all else stays as the job gives it.
enum class Unsure { masonry_stiffness, tensile_strength, needle_stiffness, packing };

/// As printed: "E of the masonry", "tensile strength", "stiffness of the needles" or "packing".
[[nodiscard]] const char* to_string(Unsure what);

/// Least factor on what is changed. Common practice, no source, as the next: E and tensile strength
/// of old masonry are hardly known to better than a factor of two without tests.
inline constexpr double least_factor = 0.5;
/// Greatest factor on what is changed.
inline constexpr double greatest_factor = 2.0;
/// What the packing of one needle after the other loses, mm: a loose wedge. Common practice, no
/// source.
inline constexpr double packing_loss = 1.0;

/// The least and the most that a support carries while one thing goes through its range and all
/// else stays as given, N. Not a bound for several at once.
struct ReactionBracket {
  Unsure what = Unsure::masonry_stiffness;
  double least = 0.0;  ///< N
  double most = 0.0;   ///< N
  /// Of the packing: the needle whose loss moves this support's reaction furthest.
  std::optional<NeedleId> needle;
};

/// One support in the stage looked at.
struct SupportSensitivity {
  SupportId support;
  StageId stage = {};                     ///< in which the needles together carry most
  double reaction = 0.0;                  ///< as the job is given, N
  std::vector<ReactionBracket> brackets;  ///< one for each thing that was changed

  /// The bracket that is furthest from the reaction either way; null where there is none.
  [[nodiscard]] const ReactionBracket* worst() const;
};

/// What all supports depend on, under one masonry model.
struct Sensitivity {
  MasonryModel model = MasonryModel::uncracked;
  double mesh_size = 0.0;       ///< of the elements that the changes were found on, mm
  bool by_differences = false;  ///< found on larger elements than the reactions, and added to them
  std::vector<SupportSensitivity> supports;
  /// Changes under which the wall has no equilibrium, in words; their reactions are in no bracket.
  std::vector<std::string> falls;
};

}  // namespace deadshore::solver
