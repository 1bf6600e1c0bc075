#pragma once

#include <cstddef>
#include <variant>

/// Identity in a job. Its parts are known by their places in its lists, each with a type of its own
/// so that one cannot be taken for another, and never by their names: a name is a label for people.
namespace deadshore::solver {

/// Place in `Job::needles`.
enum class NeedleId : std::size_t {};
/// Place in `Job::dead_shores`.
enum class ShoreId : std::size_t {};
/// Place in `Job::line_loads`.
enum class LineLoadId : std::size_t {};
/// Place in `Job::point_loads`.
enum class PointLoadId : std::size_t {};
/// Place in `Job::lintels`.
enum class LintelId : std::size_t {};
/// Place among the stages of the work.
enum class StageId : std::size_t {};

/// A load on the wall.
using LoadId = std::variant<LineLoadId, PointLoadId>;

/// The place that an id stands for.
template <class Id>
[[nodiscard]] constexpr std::size_t index_of(Id id) {
  return static_cast<std::size_t>(id);
}

}  // namespace deadshore::solver
