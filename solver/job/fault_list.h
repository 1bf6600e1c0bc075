#pragma once

#include "mesh/plane.h"
#include "solver/job/faults.h"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// The parts that `find_complete_job_faults` is put together from, and those of the house. Each
/// adds what it finds to a list.
namespace deadshore::solver {

/// Two edges closer than this leave no masonry between them, mm.
inline constexpr double least_masonry = 1.0;

/// Faults in the order in which they are found.
using FaultList = std::vector<Fault>;

/// Path of an entry of a list in the job, counted from 0: "needle[0]".
[[nodiscard]] std::string entry_path(std::string_view table, std::size_t index);
/// Path of a key of such an entry: "needle[0].x".
[[nodiscard]] std::string key_of(std::string_view table, std::size_t index, std::string_view key);

/// A length (mm) in m, or in mm below 1 m: "5.6 m", "150 mm".
[[nodiscard]] std::string in_words(double length);

/// "1.1 m to 2 m".
[[nodiscard]] std::string in_words(mesh::Interval interval);

/// "stair window" in quotes.
[[nodiscard]] std::string quoted(std::string_view name);

/// Length that two stretches have in common, mm; below 0 the gap between them.
[[nodiscard]] double overlap(mesh::Interval a, mesh::Interval b);

/// Names that are taken already, each with the path of its key.
using TakenNames = std::map<std::string, std::string>;

/// Refuses a name that is empty or already among `taken`, whatever spaces are round it, and adds it
/// to them.
void check_name(const std::string& name, const std::string& key, TakenNames& taken,
                FaultList& faults);

/// Refuses a stretch (mm) that is empty or not on a wall of this length (mm). The faults stand at
/// the keys `from` and `to` of the path `entry`.
void check_stretch(mesh::Interval x, double wall_length, const std::string& entry,
                   FaultList& faults);

/// Refuses a load at `x` whose bearing is not on a wall of this length; all in mm. The fault stands
/// at the path `x_key`.
void check_bearing(double x, double bearing, double wall_length, const std::string& x_key,
                   FaultList& faults);

/// The house, from which loads come: everything but their levels, which count with the loads.
void find_house_faults(const House& house, const mesh::WallShape& wall, FaultList& faults);

/// Numbers that are not finite or not in the range of their key; without the house's.
void find_number_faults(const Job& job, FaultList& faults);

/// Things without a name, or with another's.
void find_name_faults(const Job& job, FaultList& faults);

/// The outline and the cut in it.
void find_outline_faults(const Job& job, FaultList& faults);

/// Openings, lintels, and the cut among them; for a sound outline.
void find_opening_faults(const Job& job, FaultList& faults);
void find_lintel_faults(const Job& job, FaultList& faults);
void find_cut_faults(const Job& job, FaultList& faults);

/// Loads and needles; for a sound outline.
void find_load_faults(const Job& job, FaultList& faults);
void find_needle_faults(const Job& job, FaultList& faults);

/// Needle frames, and the needles on them.
void find_frame_faults(const Job& job, FaultList& faults);

/// Refuses steel so thin that it buckles before it yields.
void check_section_class(const NeedleMember& member, const std::string& key, FaultList& faults);

/// What is wrong, at `key`, with a prop that is set to `extension`: unsound, out of its reach, or
/// its safe load not known there.
[[nodiscard]] std::optional<Fault> fault_of_prop(const Job& job, const Prop& prop, double extension,
                                                 const std::string& key);

/// The permanent beam with its padstones, and the dead shores; for a sound outline.
void find_beam_faults(const Job& job, FaultList& faults);
void find_dead_shore_faults(const Job& job, FaultList& faults);

/// What dead shores are made of.
void find_shore_faults(const Job& job, FaultList& faults);

/// How the beam goes up.
void find_lift_faults(const Job& job, FaultList& faults);

/// How what comes out is taken apart.
void find_removal_faults(const Job& job, FaultList& faults);

/// What is asked of the analysis; for a sound outline.
void find_analysis_faults(const Job& job, FaultList& faults);

}  // namespace deadshore::solver
