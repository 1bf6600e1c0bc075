#include "mesh/plane.h"
#include "solver/job/number_faults.h"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <optional>
#include <utility>
#include <variant>

namespace deadshore::solver {

namespace {

constexpr double beyond_wall = 1000.0;  // mm, a row may run past the wall's ends

/// One frame of a job, and where its faults go.
struct ShoreInJob {
  const Job& job;
  std::size_t index;
  std::reference_wrapper<FaultList> faults;

  [[nodiscard]] const ShoreFrame& frame() const { return *job.dead_shores[index].frame; }
  [[nodiscard]] std::string key(const std::string& own) const {
    return fmt::format("dead_shore[{}].frame{}{}", index, own.empty() ? "" : ".", own);
  }
  void refuse(const std::string& own_key, std::string found, std::string due) const {
    faults.get().push_back({key(own_key), std::move(found), std::move(due)});
  }
};

/// Refuses a row of more parts than any row has: each is reckoned with on its own.
void check_count(const ShoreInJob& in, const char* key, double spacing) {
  constexpr double most = 500.0;
  const double length = in.frame().x.length();
  if (spacing > 0.0 && length > most * spacing)
    in.refuse(
        key, fmt::format("{}, in a row of {}", in_words(spacing), in_words(length)),
        fmt::format("{} or more, for at most {:g} in the row", in_words(length / most), most));
}

void check_row(const ShoreInJob& in) {
  const ShoreFrame& frame = in.frame();
  check_count(in, "joist_spacing", frame.joist_spacing);
  if (const auto* props = std::get_if<PropRow>(&frame.uprights))
    check_count(in, "most_apart", props->most_apart);
  if (frame.distance <= mesh::same_place || frame.distance >= frame.joist_span - mesh::same_place)
    in.refuse("distance",
              fmt::format("{}, under joists that span {}", in_words(frame.distance),
                          in_words(frame.joist_span)),
              "a place between the wall and the joists' far bearing");
  if (frame.joist_width >= frame.joist_spacing)
    in.refuse("joist_width",
              fmt::format("{}, at a spacing of {}", in_words(frame.joist_width),
                          in_words(frame.joist_spacing)),
              "joists clear of one another");
  if (frame.x.length() < frame.joist_spacing) {
    in.refuse("to", fmt::format("a row from {}", in_words(frame.x)),
              "a row from left to right, a spacing of joists long or more");
    return;
  }
  if (frame.footing.sole.length < frame.x.length() - mesh::same_place)
    in.refuse("sole_length",
              fmt::format("{}, under a row of {}", in_words(frame.footing.sole.length),
                          in_words(frame.x.length())),
              "a sole as long as the row or longer");
  const double length = in.job.wall.length;
  if (frame.x.from < -beyond_wall - mesh::same_place)
    in.refuse("from", in_words(frame.x.from), "a row no more than 1 m beyond the wall's ends");
  if (frame.x.to > length + beyond_wall + mesh::same_place)
    in.refuse("to",
              fmt::format("{}, where the wall ends at {}", in_words(frame.x.to), in_words(length)),
              "a row no more than 1 m beyond the wall's ends");
}

void check_places(const ShoreInJob& in, const PropRow& props) {
  const ShoreFrame& frame = in.frame();
  const double half = 0.5 * props.base;
  const std::vector<double>& places = props.places;
  if (places.size() == 1)
    in.refuse("places", "one place", "two props or more, or no places, which proposes them");
  for (std::size_t i = 0; i < places.size(); ++i) {
    const std::string key = fmt::format("places[{}]", i);
    check_number(in.key(key), places[i], fields::m, fields::any, in.faults);
    if (places[i] - half < frame.x.from - mesh::same_place ||
        places[i] + half > frame.x.to + mesh::same_place)
      in.refuse(key,
                fmt::format("{}, with a base {} wide, in a row from {}", in_words(places[i]),
                            in_words(props.base), in_words(frame.x)),
                "a prop whole on the row's sole");
    if (i > 0 && places[i] - places[i - 1] < props.base - mesh::same_place)
      in.refuse(key, fmt::format("{} after {}", in_words(places[i]), in_words(places[i - 1])),
                "rising places, a base or more apart");
  }
}

void check_prop(const ShoreInJob& in, const PropRow& props) {
  const ShoreFrame& frame = in.frame();
  if (frame.x.length() < 4.0 * props.base)
    in.refuse("to", fmt::format("a row of {}", in_words(frame.x.length())),
              "room for two props with their bases");
  const double sole = frame.footing.sole.timber.section.b;
  if (sole < props.base - mesh::same_place)
    in.refuse(
        "sole_width",
        fmt::format("{}, less than the props' base of {}", in_words(sole), in_words(props.base)),
        "a sole under the whole base");
  check_places(in, props);
  if (std::optional<Fault> fault =
          fault_of_prop(in.job, props.prop, upright_length(frame), in.key("prop")))
    in.faults.get().push_back(*std::move(fault));
}

void check_studs(const ShoreInJob& in, const StudRow& studs) {
  const ShoreFrame& frame = in.frame();
  check_count(in, "stud_spacing", studs.spacing);
  const double width = studs.stud.section.b;
  if (studs.spacing < 2.0 * width)
    in.refuse("stud_spacing",
              fmt::format("{}, of studs {} wide", in_words(studs.spacing), in_words(width)),
              "studs clear of one another");
  if (frame.x.length() < 4.0 * width)
    in.refuse("to", fmt::format("a row of {}", in_words(frame.x.length())), "room for two studs");
}

void check_uprights(const ShoreInJob& in) {
  const ShoreFrame& frame = in.frame();
  const double length = upright_length(frame);
  if (length <= 0.0) {
    in.refuse("joist_level",
              fmt::format("{}, which leaves {} between head plate and sole",
                          in_words(frame.joist_level), in_words(length)),
              "joists well above the floor that the shore stands on");
    return;
  }
  if (const auto* studs = std::get_if<StudRow>(&frame.uprights))
    check_studs(in, *studs);
  else
    check_prop(in, std::get<PropRow>(frame.uprights));
}

}  // namespace

void find_shore_faults(const Job& job, FaultList& faults) {
  for (std::size_t i = 0; i < job.dead_shores.size(); ++i) {
    if (!job.dead_shores[i].frame) continue;
    const ShoreInJob in{job, i, faults};
    const std::size_t before = faults.size();
    check_section_class(in.frame().head, in.key(""), faults);
    check_row(in);
    if (faults.size() > before) continue;
    check_uprights(in);
  }
}

}  // namespace deadshore::solver
