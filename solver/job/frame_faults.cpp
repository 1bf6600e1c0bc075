#include "mesh/plane.h"
#include "solver/job/number_faults.h"
#include "solver/members/error.h"
#include "solver/members/prop.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>

namespace deadshore::solver {

namespace {

/// One frame of a job, and where its faults go.
struct FrameInJob {
  const Job& job;
  std::size_t index;
  std::reference_wrapper<FaultList> faults;

  [[nodiscard]] const NeedleFrame& frame() const { return job.needle_frames[index]; }
  [[nodiscard]] const NeedleProp& prop(std::size_t i) const { return frame().props[i]; }
  [[nodiscard]] std::string prop_key(std::size_t i, std::string_view key) const {
    return fmt::format("needle_frame[{}].{}", index, key_of("prop", i, key));
  }
  void refuse(const std::string& key, std::string found, std::string due) const {
    const std::string path = fmt::format("needle_frame[{}]", index);
    faults.get().push_back(
        {key.empty() ? path : path + "." + key, std::move(found), std::move(due)});
  }
  void refuse_prop(std::size_t i, std::string_view key, std::string found, std::string due) const {
    faults.get().push_back({prop_key(i, key), std::move(found), std::move(due)});
  }
};

void check_leaves(const FrameInJob& in) {
  const std::vector<mesh::Interval>& leaves = in.frame().leaves;
  const double thickness = in.job.thickness;
  for (std::size_t i = 0; i < leaves.size(); ++i) {
    const std::string key = fmt::format("leaves[{}]", i);
    const mesh::Interval leaf = leaves[i];
    for (const double side : {leaf.from, leaf.to})
      check_number(fmt::format("needle_frame[{}].{}", in.index, key), side, fields::mm, fields::any,
                   in.faults);
    if (leaf.length() <= mesh::same_place)
      in.refuse(key, in_words(leaf), "a leaf from its outer side to its inner side");
    else if (leaf.from < -mesh::same_place || leaf.to > thickness + mesh::same_place)
      in.refuse(key, fmt::format("{}, in a wall {} thick", in_words(leaf), in_words(thickness)),
                "leaves inside the wall");
    for (std::size_t j = 0; j < i; ++j)
      if (overlap(leaf, leaves[j]) > mesh::same_place)
        in.refuse(key,
                  fmt::format("{}, where another is from {}", in_words(leaf), in_words(leaves[j])),
                  "leaves clear of one another");
  }
}

/// Props must be able to hold the needle up: it can only push down on `up` ones.
void check_balance(const FrameInJob& in) {
  const auto reach = [&](PropSide side, PropAction action, auto better) {
    double found = NAN;
    for (const NeedleProp& prop : in.frame().props)
      if (prop.side == side && prop.action == action &&
          (std::isnan(found) || better(prop.distance, found)))
        found = prop.distance;
    return found;
  };
  const double inside = reach(PropSide::inside, PropAction::up, std::less<>());
  const double outside = reach(PropSide::outside, PropAction::up, std::less<>());
  if (std::isnan(inside) && std::isnan(outside)) {
    in.refuse("prop", "no prop that acts up", "props that carry the needle");
    return;
  }
  if (!std::isnan(inside) && !std::isnan(outside)) return;
  const PropSide side = std::isnan(inside) ? PropSide::outside : PropSide::inside;
  const double nearest = std::isnan(inside) ? outside : inside;
  const double tail = reach(side, PropAction::down, std::greater<>());
  if (!(tail > nearest))
    in.refuse(
        "prop",
        fmt::format("props under the needle on the {} alone, and no tail held down behind them",
                    side == PropSide::inside ? "inside" : "outside"),
        "props on both sides of the wall, or one that acts down farther out");
}

void check_place(const FrameInJob& in, std::size_t i) {
  const NeedleProp& prop = in.prop(i);
  const double half_base = 0.5 * prop.footing.sole.prop_base;
  if (prop.distance < half_base + mesh::same_place) {
    in.refuse_prop(i, "distance",
                   fmt::format("{}, which puts its base, {} wide, under the wall",
                               in_words(prop.distance), in_words(2.0 * half_base)),
                   "a prop clear of the wall");
    return;
  }
  for (std::size_t j = 0; j < i; ++j) {
    const NeedleProp& other = in.prop(j);
    const double clear = half_base + 0.5 * other.footing.sole.prop_base;
    if (other.side == prop.side &&
        std::abs(other.distance - prop.distance) < clear - mesh::same_place)
      in.refuse_prop(i, "distance",
                     fmt::format("{}, where prop {} stands at {}", in_words(prop.distance),
                                 quoted(other.mark), in_words(other.distance)),
                     fmt::format("props {} apart or more, by their bases", in_words(clear)));
  }
}

void check_sole(const FrameInJob& in, std::size_t i) {
  const SolePlate& sole = in.prop(i).footing.sole;
  const auto check = [&](const char* key, double size) {
    if (size < sole.prop_base - mesh::same_place)
      in.refuse_prop(i, key,
                     fmt::format("{}, less than the prop's base of {}", in_words(size),
                                 in_words(sole.prop_base)),
                     "a sole under the whole base");
  };
  check("sole_width", sole.timber.section.b);
  check("sole_length", sole.length);
}

/// Props of the job's choice, of the same class, that reach `extension`: " such as B40".
std::string such_as(const Job& job, const Prop& wanted, double extension) {
  for (const Prop& prop : job.prop_choices)
    if (prop.prop_class == wanted.prop_class && extension >= prop.shortest &&
        extension <= prop.longest)
      return ", such as " + prop.name;
  return "";
}

void check_extension(const FrameInJob& in, std::size_t i) {
  const NeedleProp& prop = in.prop(i);
  const double extension = extension_of(in.frame(), prop, in.job.wall.cut.soffit);
  if (extension <= 0.0) {
    const bool up = prop.action == PropAction::up;
    in.refuse_prop(i, "level",
                   fmt::format("{}, which leaves no room for a prop {} the needle",
                               in_words(prop.level), up ? "under" : "over"),
                   up ? "ground well below the needle" : "something firm well above the needle");
    return;
  }
  if (std::optional<Fault> fault =
          fault_of_prop(in.job, prop.prop, extension, in.prop_key(i, "prop")))
    in.faults.get().push_back(*std::move(fault));
}

void check_prop(const FrameInJob& in, std::size_t i) {
  const NeedleProp& prop = in.prop(i);
  for (std::size_t j = 0; j < i; ++j)
    if (in.prop(j).mark == prop.mark)
      in.refuse_prop(i, "mark", fmt::format("\"{}\", also the mark of prop[{}]", prop.mark, j),
                     "a mark of its own");
  check_place(in, i);
  check_sole(in, i);
  check_extension(in, i);
}

void check_frame(const FrameInJob& in) {
  check_section_class(in.frame().member, entry_path("needle_frame", in.index), in.faults);
  check_leaves(in);
  const NeedleFrame& frame = in.frame();
  const double soffit = in.job.wall.cut.soffit;
  const double depth = depth_of(frame.member) + frame.packing.thickness;
  if (depth >= soffit) {
    in.refuse("",
              fmt::format("a needle with packing {} deep, under a soffit at {}", in_words(depth),
                          in_words(soffit)),
              "room for the needle below the soffit");
    return;
  }
  if (frame.props.size() < 2) {
    in.refuse("prop",
              fmt::format("{} prop{}", frame.props.size(), frame.props.size() == 1 ? "" : "s"),
              "at least two props");
    return;
  }
  check_balance(in);
  for (std::size_t i = 0; i < frame.props.size(); ++i) check_prop(in, i);
}

void check_needle_on_frame(const Job& job, std::size_t i, FaultList& faults) {
  const Needle& needle = job.needles[i];
  if (!needle.frame) return;
  if (*needle.frame >= job.needle_frames.size()) {
    faults.push_back({key_of("needle", i, "frame"), fmt::format("frame {}", *needle.frame),
                      fmt::format("one of the {} needle frames", job.needle_frames.size())});
    return;
  }
  const double width = width_of(job.needle_frames[*needle.frame].member);
  if (needle.bearing_width > width + mesh::same_place)
    faults.push_back(
        {key_of("needle", i, "bearing_width"),
         fmt::format("{}, on a needle {} wide", in_words(needle.bearing_width), in_words(width)),
         "a bearing no wider than the needle"});
}

}  // namespace

void check_section_class(const NeedleMember& member, const std::string& key, FaultList& faults) {
  const auto* steel = std::get_if<SteelMember>(&member);
  if (steel != nullptr && steel->class_in_bending == 4)
    faults.push_back({key,
                      fmt::format("{} in {}, so thin that it buckles before it yields (class 4)",
                                  steel->section.name, to_string(steel->grade)),
                      "a section of class 1, 2 or 3"});
}

std::optional<Fault> fault_of_prop(const Job& job, const Prop& prop, double extension,
                                   const std::string& key) {
  try {
    require_sound(prop);
  } catch (const MemberError& error) {
    return Fault{key, error.member() + ": " + error.found(), error.due()};
  }
  if (extension < prop.shortest || extension > prop.longest)
    return Fault{
        key,
        fmt::format("{}, which reaches {}, where {} is needed", prop.name,
                    in_words(mesh::Interval{prop.shortest, prop.longest}), in_words(extension)),
        fmt::format("a prop for {}{}", in_words(extension), such_as(job, prop, extension))};
  try {
    static_cast<void>(safe_load(prop, extension, job.check_rules.prop_basis));
  } catch (const MemberError& error) {
    return Fault{key,
                 fmt::format("{} at {}, whose safe load is not known ({}: {}, and {})", prop.name,
                             in_words(extension), error.member(), error.found(), error.due()),
                 "a prop within the basis of safe loads, or another basis in [checks]"};
  }
  return std::nullopt;
}

void find_frame_faults(const Job& job, FaultList& faults) {
  for (std::size_t i = 0; i < job.needle_frames.size(); ++i) check_frame({job, i, faults});
  for (std::size_t i = 0; i < job.needles.size(); ++i) check_needle_on_frame(job, i, faults);
}

}  // namespace deadshore::solver
