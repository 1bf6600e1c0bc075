#pragma once

#include <cstddef>
#include <variant>

/// Identity in a job. Its parts are known by their places in its lists, each with a type of its own
/// so that one cannot be taken for another, and never by their names: a name is a label for people.
namespace deadshore::solver {

enum class NeedleId : std::size_t {};     ///< place in `Job::needles`
enum class ShoreId : std::size_t {};      ///< place in `Job::dead_shores`
enum class LineLoadId : std::size_t {};   ///< place in `Job::line_loads`
enum class PointLoadId : std::size_t {};  ///< place in `Job::point_loads`
enum class LintelId : std::size_t {};     ///< place in `Job::lintels`
enum class StageId : std::size_t {};      ///< place among the stages of the work

/// A load on the wall.
using LoadId = std::variant<LineLoadId, PointLoadId>;

/// The place that an id stands for.
template <class Id>
[[nodiscard]] constexpr std::size_t index_of(Id id) {
  return static_cast<std::size_t>(id);
}

}  // namespace deadshore::solver
