#pragma once

#include "solver/job/quantity.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <variant>

/// The job file as data: each key once, with the member of the job that it fills.
///
/// The tables stand by families in solver/job/*_fields.h, such as
///
///     inline constexpr std::array needle_fields{
///         text<&Needle::name>("name", required, "N1", "What the needle is called."),
///         quantity<&Needle::slack>("slack", with_default, mm, not_negative, "2 mm",
///                                  "Gap to close before the needle bears."),
///     };
///     inline constexpr Table<Needle> needle{"needle", list, required, "A needle.",
///                                           needle_fields};
///
/// A new key is a new row, and a member of the struct. Reading (io/job/field_reader.h), the faults
/// of numbers out of their range (solver/job/number_faults.h), `deadshore keys`, `schema` and
/// `new`, and the test that gives every key what it is not due to have, follow from the row.
namespace deadshore::solver {

/// How a value is written.
enum class KeyKind {
  text,             ///< a string that is not empty
  number,           ///< a number without dimension
  quantity,         ///< a string with a number and a unit of the key's dimension
  quantity_or_top,  ///< the same, or the string "top"
  choice,           ///< one of the key's words
  choices,          ///< a list of them, each once
  texts,            ///< a list of texts
  quantities,       ///< a list of quantities
  outline,          ///< a list of points, each a list of two lengths
  stretches,        ///< a list of stretches, each from one length to another
  flag,             ///< true or false
  layers,           ///< a list of what a floor, roof or wall is built up of
};

/// Whether a key may be left out, and what holds then.
enum class Need {
  required,
  with_default,  ///< what a new value of the struct has, or `Key::fallback`
  optional,      ///< the key's meaning says it
};

/// A word of a choice and what it stands for: an enumerator, or whether something is so.
struct Word {
  std::string_view text;  ///< as written in the job file
  int value = 0;          ///< of the enumerator, or 0 and 1 for no and yes

  template <class Value>
  constexpr Word(std::string_view word, Value stands_for)
      : text(word), value(static_cast<int>(stands_for)) {}
};

/// One key of a table, whatever is made of it.
struct Key {
  std::string_view name = {};  ///< as written in the job file
  KeyKind kind = KeyKind::text;
  Need need = Need::optional;
  Unit unit = {};                    ///< of numbers and quantities
  Range range = {};                  ///< same
  std::span<const Word> words = {};  ///< of a choice
  std::string_view fallback = {};    ///< the default as written between the quotes
  std::string_view example = {};     ///< same; of a list with its brackets
  std::string_view meaning = {};     ///< one sentence
};

/// How a member of a struct, or of what is inside it, is reached.
template <class Struct, class Value>
struct Access {
  Value& (*to_change)(Struct&);            ///< the member, to be written
  const Value& (*to_read)(const Struct&);  ///< the same, to be read
};

/// How a member that is one of a choice's words is reached: by the word's value.
template <class Struct>
struct WordAccess {
  void (*set)(Struct&, int);  ///< gives the member the word's value
  int (*get)(const Struct&);  ///< the value of the member's word
};

/// A level on the wall. Where it follows the wall's top the table's reader puts it there.
template <class Struct>
struct LevelAccess {
  Access<Struct, double> level;
  Access<Struct, bool> follows_top;
};

/// The member that a key fills; none where the table's reader makes something else of it.
template <class Struct>
using Member = std::variant<std::monostate, Access<Struct, double>,
                            Access<Struct, std::optional<double>>, Access<Struct, int>,
                            Access<Struct, std::string>, WordAccess<Struct>, LevelAccess<Struct>>;

/// A key of the table of a struct.
template <class Struct>
struct Field {
  Key key;                     ///< what is written
  Member<Struct> member = {};  ///< what it fills
  /// Whether the key counts, by what the struct has so far; null: always. A required key is
  /// required where it counts.
  bool (*counts)(const Struct&) = nullptr;

  /// The same field, with a default that a new value of the struct does not show.
  [[nodiscard]] constexpr Field by_default(std::string_view fallback) const {
    Field field = *this;
    field.key.need = Need::with_default;
    field.key.fallback = fallback;
    return field;
  }
  /// The same field, which counts only where this holds.
  [[nodiscard]] constexpr Field when(bool (*holds)(const Struct&)) const {
    Field field = *this;
    field.counts = holds;
    return field;
  }
};

/// The number that a member is; none where it is no number, or not there.
template <class Struct>
std::optional<double> number_in(const Struct& values, const Member<Struct>& member) {
  if (const auto* number = std::get_if<Access<Struct, double>>(&member))
    return number->to_read(values);
  if (const auto* number = std::get_if<Access<Struct, std::optional<double>>>(&member))
    return number->to_read(values);
  if (const auto* number = std::get_if<Access<Struct, int>>(&member))
    return number->to_read(values);
  if (const auto* level = std::get_if<LevelAccess<Struct>>(&member))
    return level->level.to_read(values);
  return std::nullopt;
}

/// How a table of the job file is written.
enum class TableForm {
  root,    ///< keys above the first table
  single,  ///< [name]
  named,   ///< [name.NAME], once for each NAME
  list,    ///< [[name]], once for each entry
};

/// A table of the job file, for a struct of the job.
template <class Struct>
struct Table {
  std::string_view name = {};  ///< with those of the tables around it: "needle_frame.prop"
  TableForm form = TableForm::single;
  Need need = Need::optional;
  std::string_view meaning = {};  ///< one sentence
  std::span<const Field<Struct>> fields = {};

  /// What holds where the file says nothing.
  Struct (*defaults)() = [] { return Struct{}; };
};

/// Words to write tables down with; the tables themselves are here too.
namespace fields {

using enum Need;
using enum TableForm;

inline constexpr Unit number{};
inline constexpr Unit mm{Dimension::length, "mm"};
inline constexpr Unit m{Dimension::length, "m", 1e3};
inline constexpr Unit m2{Dimension::area, "m2", 1e6};
inline constexpr Unit degrees{Dimension::angle, "degrees"};
inline constexpr Unit newtons{Dimension::force, "N"};
inline constexpr Unit kN{Dimension::force, "kN", 1e3};
inline constexpr Unit kgf{Dimension::force, "kgf", 9.80665};
inline constexpr Unit kN_or_mass{Dimension::weight, "kN", 1e3};
inline constexpr Unit kN_per_m{Dimension::force_per_length, "kN/m"};
inline constexpr Unit kN_per_mm{Dimension::stiffness, "kN/mm", 1e3};
inline constexpr Unit kN_per_m2{Dimension::stress, "kN/m2", 1e-3};
inline constexpr Unit N_per_mm2{Dimension::stress, "N/mm2"};
inline constexpr Unit kN_per_m3{Dimension::force_per_volume, "kN/m3", 1e-6};
inline constexpr Unit MN_per_m3{Dimension::force_per_volume, "MN/m3", 1e-3};

// Ranges of numbers, by name.
inline constexpr Range any{};
inline constexpr Range positive{.least = 0.0, .above_least = true};
inline constexpr Range positive_or_none{.least = 0.0, .above_least = true, .or_none = true};
inline constexpr Range not_negative{.least = 0.0};
inline constexpr Range zero_to_one{.least = 0.0, .most = 1.0};
inline constexpr Range above_zero_to_one{.least = 0.0, .most = 1.0, .above_least = true};
inline constexpr Range poisson{.least = 0.0, .most = 0.5, .below_most = true};

/// A range with the values that are likely, in internal units: what lies outside these is taken for
/// a slip of a thousand in the unit. The ranges below are of masonry, stone, concrete and ground,
/// and of a house.
constexpr Range likely(Range range, double least, double most, std::string_view unit) {
  range.likely_least = least;
  range.likely_most = most;
  range.likely_unit = unit;
  return range;
}
inline constexpr Range solid_weight = likely(not_negative, 1e-6, 90e-6, "kN/m3");
inline constexpr Range masonry_E = likely(positive, 50.0, 1e5, "N/mm2");
inline constexpr Range solid_E = likely(positive, 10.0, 3e5, "N/mm2");
inline constexpr Range solid_strength = likely(positive, 0.05, 300.0, "N/mm2");
inline constexpr Range masonry_tension = likely(not_negative, 1e-4, 10.0, "N/mm2");
inline constexpr Range ground_pressure = likely(positive, 0.005, 10.0, "kN/m2");
inline constexpr Range ground_stiffness = likely(positive_or_none, 2e-4, 2.0, "MN/m3");
inline constexpr Range span_of_house = likely(positive, 200.0, 50e3, "m");
inline constexpr Range load_on_area = likely(not_negative, 1e-6, 0.1, "kN/m2");
inline constexpr Range line_of_load = likely(not_negative, 1e-3, 2000.0, "kN/m");
inline constexpr Range whole_wall = likely(positive, 500.0, 200e3, "m");

inline constexpr Range inside_the_wall{.bounds = "inside the wall"};
inline constexpr Range on_masonry{.bounds = "on masonry"};

/// Steps from a struct to what is inside a member: the value of an optional, an alternative of a
/// variant. Where it is not there, the field must not count.
struct ValueOf {
  constexpr auto& operator()(auto& optional) const { return *optional; }
};
inline constexpr ValueOf value_of{};

/// A step from a variant to the alternative of this type.
template <class Alternative>
struct As {
  constexpr auto& operator()(auto& variant) const { return std::get<Alternative>(variant); }
};
template <class Alternative>
inline constexpr As<Alternative> as{};

/// Follows pointers to members, `value_of` and `as` from a struct inwards.
constexpr auto& step(auto& from, auto how) {
  if constexpr (std::is_member_pointer_v<decltype(how)>)
    return from.*how;
  else
    return how(from);
}
template <auto first, auto... rest>
constexpr auto& follow(auto& from) {
  if constexpr (sizeof...(rest) == 0)
    return step(from, first);
  else
    return follow<rest...>(step(from, first));
}

/// The struct that a pointer to a member belongs to; for its type alone.
template <class Struct, class Value>
Struct owner_of(Value Struct::*);

/// The way from a struct to a member of it or of what is inside it.
template <auto first, auto... rest>
struct Path {
  using Struct = decltype(owner_of(first));
  using Value = std::remove_reference_t<decltype(follow<first, rest...>(std::declval<Struct&>()))>;

  static constexpr Access<Struct, Value> access{
      [](Struct& from) -> Value& { return follow<first, rest...>(from); },
      [](const Struct& from) -> const Value& { return follow<first, rest...>(from); }};
  static constexpr WordAccess<Struct> words{
      [](Struct& to, int value) { access.to_change(to) = static_cast<Value>(value); },
      [](const Struct& from) { return static_cast<int>(access.to_read(from)); }};
};

/// A key by itself whose value is a number, or a quantity where `unit` has a dimension.
/// \param example as written, between the quotes
/// \param meaning one sentence, for `keys` and the schema
constexpr Key quantity(std::string_view name, Need need, Unit unit, Range range,
                       std::string_view example, std::string_view meaning) {
  return {.name = name,
          .kind = unit.dimension == Dimension::none ? KeyKind::number : KeyKind::quantity,
          .need = need,
          .unit = unit,
          .range = range,
          .example = example,
          .meaning = meaning};
}

/// A key whose value is a text.
constexpr Key text(std::string_view name, Need need, std::string_view example,
                   std::string_view meaning) {
  return {.name = name, .need = need, .example = example, .meaning = meaning};
}

/// A list of numbers or quantities; `bounds` in words.
constexpr Key quantities(std::string_view name, Need need, Unit unit, std::string_view bounds,
                         std::string_view example, std::string_view meaning) {
  return {.name = name,
          .kind = KeyKind::quantities,
          .need = need,
          .unit = unit,
          .range = {.bounds = bounds},
          .example = example,
          .meaning = meaning};
}

/// A key whose value is one of some words.
constexpr Key choice(std::string_view name, Need need, std::span<const Word> words,
                     std::string_view meaning) {
  return {.name = name, .kind = KeyKind::choice, .need = need, .words = words, .meaning = meaning};
}

/// The same as fields, with the path to the member that they fill.
template <auto first, auto... rest>
constexpr auto quantity(std::string_view name, Need need, Unit unit, Range range,
                        std::string_view example, std::string_view meaning) {
  return Field<typename Path<first, rest...>::Struct>{
      quantity(name, need, unit, range, example, meaning), Path<first, rest...>::access};
}

template <auto first, auto... rest>
constexpr auto text(std::string_view name, Need need, std::string_view example,
                    std::string_view meaning) {
  return Field<typename Path<first, rest...>::Struct>{text(name, need, example, meaning),
                                                      Path<first, rest...>::access};
}

template <auto first, auto... rest>
constexpr auto choice(std::string_view name, Need need, std::span<const Word> words,
                      std::string_view meaning) {
  return Field<typename Path<first, rest...>::Struct>{choice(name, need, words, meaning),
                                                      Path<first, rest...>::words};
}

/// A key that the table's reader makes something of.
template <class Struct>
constexpr Field<Struct> by_hand(const Key& key) {
  return {key};
}

}  // namespace fields

}  // namespace deadshore::solver
