#include "io/job/job_reader.h"

#include "io/error.h"
#include "io/files/whole_file.h"
#include "io/job/check_rules_reader.h"
#include "io/job/house_loads.h"
#include "io/job/house_reader.h"
#include "io/job/job_file.h"
#include "io/job/job_limits.h"
#include "io/job/job_table.h"
#include "io/job/job_wording.h"
#include "io/job/lift_reader.h"
#include "io/job/needle_frame_reader.h"
#include "io/job/permanent_works_reader.h"
#include "io/job/removal_reader.h"
#include "io/job/shore_frame_reader.h"
#include "io/job/stage_reader.h"
#include "io/job/title_block_reader.h"
#include "io/job/toml_text.h"
#include "io/job/written_values.h"
#include "io/tables/lintel_materials.h"
#include "io/tables/member_tables.h"
#include "io/tables/weight_tables.h"
#include "solver/loads/house_loads.h"

#include <fmt/format.h>
#include <toml++/toml.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace deadshore::io {

namespace {

solver::WallEnd read_end(const JobTable& wall, std::string_view key) {
  return wall.choice(key) == "held" ? solver::WallEnd::held : solver::WallEnd::free;
}

std::vector<mesh::Point> read_top(const JobTable& wall, double length, double height) {
  if (!wall.has("outline")) return {{0.0, height}, {length, height}};
  std::vector<mesh::Point> top = wall.outline("outline");
  double highest = top.front().y;
  for (const mesh::Point& point : top) highest = std::max(highest, point.y);
  constexpr double same = 1e-6;  // mm
  if (std::abs(highest - height) > same) {
    wall.refuse(
        "height", wall.written("height"),
        fmt::format("the highest point of the outline is due, \"{:g} m\"", highest / 1000.0));
  }
  return top;
}

void read_wall(const JobTable& wall, solver::Job& job) {
  job.wall.length = wall.quantity("length");
  job.wall.top = read_top(wall, job.wall.length, wall.quantity("height"));
  job.thickness = wall.quantity("thickness");
  job.left_end = read_end(wall, "left_end");
  job.right_end = read_end(wall, "right_end");
}

solver::Masonry read_masonry(const NamedTable& entry) {
  const JobTable& table = entry.table;
  return {.name = entry.name,
          .unit_weight = table.quantity("unit_weight"),
          .E = table.quantity("E"),
          .nu = table.number("nu"),
          .compressive_strength = table.quantity("compressive_strength"),
          .tensile_strength = table.quantity("tensile_strength")};
}

/// The masonry that the wall names; the others must be readable too.
solver::Masonry choose_masonry(const std::vector<NamedTable>& tables, const JobTable& wall) {
  const std::string name = wall.text("masonry");
  std::vector<std::string_view> names;
  solver::Masonry chosen;
  for (const NamedTable& entry : tables) {
    solver::Masonry masonry = read_masonry(entry);
    names.emplace_back(entry.name);
    if (entry.name == name) chosen = std::move(masonry);
  }
  if (chosen.name.empty()) {
    wall.refuse("masonry", wall.written("masonry") + ", which has no [masonry.NAME]",
                fmt::format("the nearest that has one is \"{}\"",
                            printable(std::string(nearest_name(name, names)))));
  }
  return chosen;
}

mesh::Opening read_opening(const JobTable& table) {
  return {.name = table.text("name"),
          .left = table.quantity("left"),
          .sill = table.quantity("sill"),
          .width = table.quantity("width"),
          .height = table.quantity("height"),
          .rise = table.quantity("rise")};
}

/// The place of the opening that a lintel names.
std::size_t choose_opening(const JobTable& lintel, const std::vector<mesh::Opening>& openings) {
  const std::string name = lintel.text("opening");
  const auto found = std::ranges::find(openings, name, &mesh::Opening::name);
  if (found == openings.end()) {
    lintel.refuse("opening", in_quotes(name), "due: the name of one of the openings");
  }
  return static_cast<std::size_t>(found - openings.begin());
}

solver::Lintel read_lintel(const JobTable& table, const solver::Job& job) {
  solver::Lintel lintel;
  lintel.shape = {.name = table.text("name"),
                  .opening = choose_opening(table, job.wall.openings),
                  .depth = table.quantity("depth"),
                  .bearing = table.quantity("bearing")};
  lintel.material = table.choice("material");
  const LintelMaterial& usual = lintel_material(lintel.material);
  lintel.E = table.has("E") ? table.quantity("E") : usual.E;
  lintel.nu = table.has("nu") ? table.number("nu") : usual.nu;
  lintel.unit_weight = table.has("unit_weight") ? table.quantity("unit_weight") : usual.unit_weight;
  lintel.thickness = table.has("thickness") ? table.quantity("thickness") : job.thickness;
  return lintel;
}

mesh::Cut read_cut(const JobTable& table) {
  return {.left = table.quantity("left"),
          .right = table.quantity("right"),
          .soffit = table.quantity("soffit")};
}

solver::LineLoad read_line_load(const JobTable& table, const mesh::WallShape& wall) {
  const std::optional<double> level = table.quantity_unless_top("level");
  return {.name = table.text("name"),
          .level = level.value_or(wall.height()),
          .follows_top = !level.has_value(),
          .x = {table.has("from") ? table.quantity("from") : 0.0,
                table.has("to") ? table.quantity("to") : wall.length},
          .dead = table.quantity("dead"),
          .imposed = table.quantity("imposed")};
}

solver::PointLoad read_point_load(const JobTable& table) {
  return {.name = table.text("name"),
          .x = table.quantity("x"),
          .level = table.quantity("level"),
          .bearing = table.quantity("bearing"),
          .dead = table.quantity("dead"),
          .imposed = table.quantity("imposed")};
}

/// Calls `add` with the path of each of the job's own files of tables.
template <class Add>
void add_own_tables(const JobTable& top, const JobSource& source, Add add) {
  if (!top.has("tables")) return;
  const std::filesystem::path folder = std::filesystem::path(source.file()).parent_path();
  const std::vector<std::string> files = top.texts("tables");
  if (files.size() > most_table_files) {
    source.refuse("tables", fmt::format("a list of {}", files.size()),
                  fmt::format("at most {} are due", most_table_files));
  }
  for (std::size_t i = 0; i < files.size(); ++i) {
    try {
      add(folder / files[i]);
    } catch (const FileError& error) {
      source.refuse(fmt::format("tables[{}]", i),
                    fmt::format("{}, which cannot be read ({})", in_quotes(files[i]), error.what()),
                    "a file of member tables is due");
    }
  }
}

void refuse_too_many(std::size_t rows, const std::filesystem::path& path) {
  if (rows <= most_rows) return;
  throw FileError(path, fmt::format("makes more than {} rows of one kind", most_rows));
}

/// The built-in tables with those of the job's own files.
MemberTables read_member_tables(const JobTable& top, const JobSource& source) {
  MemberTables members = built_in_member_tables();
  add_own_tables(top, source, [&](const std::filesystem::path& path) {
    add_member_file(path, members);
    refuse_too_many(std::max({members.steel.size(), members.timber.size(), members.props.size(),
                              members.grounds.size()}),
                    path);
  });
  return members;
}

/// The same of weights and uses.
WeightTables read_weight_tables(const JobTable& top, const JobSource& source) {
  WeightTables weights = built_in_weight_tables();
  add_own_tables(top, source, [&](const std::filesystem::path& path) {
    add_weight_tables(read_file(path), path.string(), weights);
    refuse_too_many(std::max(weights.materials.size(), weights.uses.size()), path);
  });
  return weights;
}

void fill_choices(const MemberTables& members, solver::Job& job) {
  std::vector<std::pair<double, const solver::SteelSection*>> by_mass;
  for (const SteelRow& row : members.steel) {
    if (row.section.kind != solver::SectionKind::i_section) continue;
    by_mass.emplace_back(solver::properties_of(row.section).mass, &row.section);
  }
  std::stable_sort(by_mass.begin(), by_mass.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  for (const auto& [mass, section] : by_mass) job.section_choices.push_back(*section);
  job.prop_choices = members.props;
}

/// The frame that a needle names, by its number.
std::size_t choose_frame(const JobTable& needle, const std::vector<solver::NeedleFrame>& frames) {
  const std::string name = needle.text("frame");
  std::vector<std::string_view> names;
  names.reserve(frames.size());
  for (const solver::NeedleFrame& frame : frames) names.emplace_back(frame.name);
  const auto found = std::find(names.begin(), names.end(), name);
  if (found != names.end()) return static_cast<std::size_t>(found - names.begin());
  needle.refuse("frame", in_quotes(name) + ", which has no [needle_frame.NAME]",
                names.empty() ? "[needle_frame.NAME] is due"
                              : fmt::format("the nearest that has one is {}",
                                            in_quotes(nearest_name(name, names))));
}

solver::Needle read_needle(const JobTable& table, const std::vector<solver::NeedleFrame>& frames) {
  solver::Needle needle;
  needle.name = table.text("name");
  needle.x = table.quantity("x");
  if (table.one_of("frame, stiffness") == "frame") {
    needle.frame = choose_frame(table, frames);
    const double width = solver::width_of(frames[*needle.frame].member);
    needle.bearing_width = table.has("bearing_width") ? table.quantity("bearing_width") : width;
  } else {
    needle.bearing_width = table.quantity("bearing_width");
    needle.stiffness = table.quantity("stiffness");
  }
  needle.slack = table.quantity("slack");
  needle.preload = table.quantity("preload");
  return needle;
}

solver::AnalysisOptions read_analysis(const JobTable& table) {
  solver::AnalysisOptions options;
  options.mesh_size = table.quantity("mesh");
  options.element = table.choice("element") == "8-node" ? mesh::QuadOrder::eight_node
                                                        : mesh::QuadOrder::four_node;
  options.masonry.clear();
  for (const std::string& model : table.choices("masonry")) {
    options.masonry.push_back(model == "cracked" ? solver::MasonryModel::cracked
                                                 : solver::MasonryModel::uncracked);
  }
  options.sequence =
      table.choice("sequence") == "staged" ? solver::Sequence::staged : solver::Sequence::at_once;
  return options;
}

void refuse_faults(const solver::Job& job, const JobSource& source) {
  const std::vector<solver::Fault> faults = solver::find_faults(job);
  if (faults.empty()) return;
  const solver::Fault& first = faults.front();
  source.refuse(source.path_in_file(first.key), first.found, "due: " + first.due);
}

solver::Job build_job(const toml::table& root, JobSource& source) {
  // Unknown keys anywhere come first: a misspelt key is also a missing one.
  const JobTable top(root, schema_table(""), "", source);
  const auto walls = top.tables("wall");
  const auto masonries = top.tables("masonry");
  const auto openings = top.tables("opening");
  const auto lintels = top.tables("lintel");
  const auto cuts = top.tables("cut");
  const auto line_loads = top.tables("line_load");
  const auto point_loads = top.tables("point_load");
  const HouseTables house = find_house_tables(top);
  const auto needles = top.tables("needle");
  const auto frames = find_frame_tables(top);
  const auto beam = find_beam_tables(top);
  const auto dead_shores = find_shore_tables(top);
  const auto lift = find_lift_tables(top);
  const auto stages = top.tables("stage");
  const JobTable removal = top.table_or_defaults("removal");
  const JobTable title_block = top.table_or_defaults("title_block");
  const auto checks = top.tables("checks");
  const JobTable analysis = top.table_or_defaults("analysis");
  check_written_values(top, schema_table(""));

  solver::Job job;
  job.title = top.text("title");
  job.title_block = read_title_block(title_block);
  const JobTable& wall = walls.front().table;
  read_wall(wall, job);
  job.masonry = choose_masonry(masonries, wall);
  source.place("masonry", "masonry." + as_key(job.masonry.name));
  for (const NamedTable& entry : openings) job.wall.openings.push_back(read_opening(entry.table));
  for (const NamedTable& entry : lintels) {
    job.lintels.push_back(read_lintel(entry.table, job));
    job.wall.lintels.push_back(job.lintels.back().shape);
  }
  job.wall.cut = read_cut(cuts.front().table);
  for (const NamedTable& entry : line_loads) {
    job.line_loads.push_back(read_line_load(entry.table, job.wall));
  }
  for (const NamedTable& entry : point_loads) {
    job.point_loads.push_back(read_point_load(entry.table));
  }
  if (!house.empty()) {
    if (!(job.wall.length > 0.0)) refuse_faults(job, source);  // it has no place to stand
    refuse_shared_names(top, house, source);
    job.house = read_house(house, read_weight_tables(top, source), job.wall, source);
    bring_down_house(house, source, job);
  }
  for (const ShoreTables& tables : dead_shores) {
    job.dead_shores.push_back(read_dead_shore(tables.shore, job.line_loads));
  }
  job = solver::with_house_loads(std::move(job));  // what stands on a shore's floor goes along
  if (!frames.empty() || beam || lift || any_frame_in(dead_shores) || top.has("tables")) {
    const MemberTables members = read_member_tables(top, source);
    for (const FrameTables& tables : frames) {
      source.place(fmt::format("needle_frame[{}]", job.needle_frames.size()),
                   "needle_frame." + as_key(tables.name));
      job.needle_frames.push_back(read_needle_frame(tables, members));
    }
    if (beam) job.beam = read_beam(*beam, members);
    read_shore_frames(dead_shores, members, job.dead_shores);
    if (lift) job.lifting = read_lifting(*lift, members);
    fill_choices(members, job);
  }
  for (const NamedTable& entry : needles) {
    job.needles.push_back(read_needle(entry.table, job.needle_frames));
  }
  read_stages(stages, job, source);
  job.removal = read_removal(removal);
  for (const NamedTable& entry : checks) job.check_rules = read_check_rules(entry.table);
  job.analysis = read_analysis(analysis);
  return job;
}

}  // namespace

solver::Job read_job(const std::filesystem::path& path) {
  return parse_job(read_job_file(path).text, path.string());
}

solver::Job parse_job(std::string_view text, const std::string& file_name) {
  return parse_job(text, file_name, Units());
}

solver::Job parse_job(std::string_view text, const std::string& file_name, const Units& units) {
  const toml::table root = parse_toml(text, file_name, "a job file");
  JobSource source(file_name, units);
  solver::Job job = build_job(root, source);
  refuse_faults(job, source);
  return job;
}

}  // namespace deadshore::io
