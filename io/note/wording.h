#pragma once

#include "solver/job/needle_frame.h"
#include "solver/result/results.h"

#include <span>
#include <string>

/// Figures and phrases as the note prints them. What is not finite prints as a dash.
namespace deadshore::io {

[[nodiscard]] std::string kilonewtons(double newtons);  ///< "21.3"

/// With what it may be wrong by, rounded up: "21.3 ± 0.1"; without it where that is not known.
[[nodiscard]] std::string kilonewtons(double newtons, double error);

[[nodiscard]] std::string fine_kilonewtons(double newtons);   ///< "21.34", for sums to be checked
[[nodiscard]] std::string loose_kilonewtons(double newtons);  ///< one decimal, two below 1 kN
[[nodiscard]] std::string millimetres(double value);  ///< "152", or "215.9" where it is not whole
[[nodiscard]] std::string whole_millimetres(double value);        ///< "216"
[[nodiscard]] std::string fine_millimetres(double value);         ///< "1.63", for movements
[[nodiscard]] std::string square_metres(double square_mm);        ///< "12.345"
[[nodiscard]] std::string two_decimals(double value);             ///< "0.60", for ratios
[[nodiscard]] std::string percent(double part);                   ///< 0.123 -> "12.3"
[[nodiscard]] std::string significant(double value, int digits);  ///< "1.63", "0.05", "1500"
[[nodiscard]] std::string scientific(double value);               ///< "1.2e-09"

/// A factor on loads: "1.63", or "over 100" where no load that matters brings the wall down.
[[nodiscard]] std::string factor_words(double factor);

/// The same of a lower bound, rounded down, and of an upper one, rounded up.
[[nodiscard]] std::string lower_factor_words(double factor);
[[nodiscard]] std::string upper_factor_words(double factor);

[[nodiscard]] std::string unit_weight(double newtons_per_cubic_mm);  ///< "19 kN/m³"

/// Three figures without an exponent: "1234", "21.3", "0.87", "0.0123".
[[nodiscard]] std::string three_figures(double value);

/// Powers of lengths raised: "N/mm2" -> "N/mm\u00b2", "cm3" -> "cm\u00b3".
[[nodiscard]] std::string with_raised_powers(std::string words);

/// "uncracked masonry", "cracked masonry".
[[nodiscard]] std::string masonry_phrase(solver::MasonryModel model);

/// Where a load is on the wall: "at 2700 mm, x = 0 to 5200 mm (5.2 m)".
[[nodiscard]] std::string place_of(const solver::LineLoad& load);
[[nodiscard]] std::string place_of(const solver::PointLoad& load);

/// " in stage \u201ccut\u201d"; empty where the work is not followed stage by stage.
[[nodiscard]] std::string in_stage(const solver::JobResult& result,
                                   const solver::StageResult& stage);

/// `words` with a full stop at their end.
[[nodiscard]] std::string as_sentence(std::string words);

/// "A", "A and B", "A, B and C".
[[nodiscard]] std::string listed(std::span<const std::string> names);

/// "UC 152x152x23 in S275, class 3 in bending", "timber 100 \u00d7 150 mm, C24".
[[nodiscard]] std::string made_of(const solver::NeedleMember& member);

/// "B35, 2000 to 3500 mm long, tubes 60.3 \u00d7 3.2 and 48.3 \u00d7 3.2 mm".
[[nodiscard]] std::string made_of(const solver::Prop& prop);

/// "level with the base", "150 mm below the base".
[[nodiscard]] std::string level_words(double level);

/// The ground with its presumed bearing, or the suspended floor by its name.
[[nodiscard]] std::string ground_words(const solver::Footing& footing);

}  // namespace deadshore::io
