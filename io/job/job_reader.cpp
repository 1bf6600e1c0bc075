#include "io/job/job_reader.h"

#include "io/error.h"
#include "io/files/whole_file.h"
#include "io/job/field_reader.h"
#include "io/job/job_limits.h"
#include "io/job/job_table.h"
#include "io/job/job_wording.h"
#include "io/job/member_reader.h"
#include "io/job/table_readers.h"
#include "io/job/toml_text.h"
#include "io/tables/member_tables.h"
#include "io/tables/usual_values.h"
#include "io/tables/weight_tables.h"
#include "solver/job/job_fields.h"
#include "solver/loads/house_loads.h"

#include <fmt/format.h>
#include <toml++/toml.h>

#include <algorithm>
#include <cmath>
#include <glib.h>
#include <memory>
#include <utility>
namespace deadshore::io {

namespace {

namespace fields = solver::fields;

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

void read_wall(const JobTable& table, solver::Job& job) {
  job = read(table, fields::wall, std::move(job));
  job.wall.top = read_top(table, job.wall.length, table.quantity("height"));
}

/// The masonry that the wall names; the others must be readable too.
solver::Masonry choose_masonry(const std::vector<NamedTable>& tables, const JobTable& wall) {
  const std::string name = wall.text("masonry");
  std::vector<std::string_view> names;
  solver::Masonry chosen;
  for (const NamedTable& entry : tables) {
    const solver::Masonry masonry = read(entry.table, fields::masonry);
    names.emplace_back(entry.name);
    if (entry.name != name) continue;
    chosen = masonry;
    chosen.name = name;
  }
  if (chosen.name.empty()) {
    wall.refuse("masonry", wall.written("masonry") + ", which has no [masonry.NAME]",
                fmt::format("the nearest that has one is \"{}\"",
                            printable(std::string(nearest_name(name, names)))));
  }
  return chosen;
}

solver::Lintel read_lintel(const JobTable& table, const solver::Job& job) {
  solver::Lintel lintel;
  lintel.shape.opening = place_of_named(table, "opening", job.wall.openings, "openings");
  lintel.material = table.text("material");
  const LintelMaterial& usual = lintel_material(lintel.material);
  lintel.E = usual.E;
  lintel.nu = usual.nu;
  lintel.unit_weight = usual.unit_weight;
  lintel.thickness = job.thickness;
  return read(table, fields::lintel, std::move(lintel));
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
  if (table.one_of({"frame", "stiffness"}) == "frame") {
    needle.frame = choose_frame(table, frames);
    needle.bearing_width = solver::width_of(frames[*needle.frame].member);
  } else {
    table.require("bearing_width");
  }
  return read(table, fields::needle, std::move(needle));
}

solver::PierFooting read_footing(const JobTable& table, const MemberTables& members) {
  solver::PierFooting footing;
  footing.ground =
      read_kind_of_ground(table, table.one_of({"ground", "ground_bearing"}), members, {});
  return read(table, fields::footing, std::move(footing));
}

solver::CheckRules read_check_rules(const JobTable& table) {
  solver::CheckRules rules;
  if (table.choice<solver::SafetyMethod>("basis") == solver::SafetyMethod::permissible) {
    rules.basis = solver::permissible_stresses();
    rules.combination = solver::Combination::unfactored;
    for (const char* key : {"combination", "gamma_G", "gamma_Q"}) {
      if (!table.has(key)) continue;
      table.refuse(key, table.written(key) + " with permissible stresses",
                   "loads are unfactored then; leave it out");
    }
  }
  return read(table, fields::checks, rules);
}

solver::AnalysisOptions read_analysis(const JobTable& top) {
  solver::AnalysisOptions options = read_single(top, fields::analysis);
  const std::optional<JobTable> table = top.table("analysis");
  if (!table) return options;
  options.masonry.clear();
  for (const int model : table->choices("masonry")) {
    options.masonry.push_back(static_cast<solver::MasonryModel>(model));
  }
  return options;
}

/// Whether the job names members of the tables, or has tables of its own.
bool needs_members(const JobTable& top) {
  const std::vector<NamedTable> shores = top.tables("dead_shore");
  return top.has("needle_frame") || top.has("beam") || top.has("lift") || top.has("tables") ||
         top.has("footing") || std::ranges::any_of(shores, [](const NamedTable& shore) {
           return shore.table.has("frame");
         });
}

/// Everything that may name a member.
void read_members_of(const JobTable& top, const MemberTables& members, JobSource& source,
                     solver::Job& job) {
  for (const NamedTable& entry : top.tables("needle_frame")) {
    source.place(fmt::format("needle_frame[{}]", job.needle_frames.size()),
                 "needle_frame." + as_key(entry.name));
    job.needle_frames.push_back(read_needle_frame(entry, members));
  }
  if (const auto beam = top.table("beam")) job.beam = read_beam(*beam, members);
  for (const NamedTable& entry : top.tables("dead_shore")) {
    job.dead_shores.push_back(read_dead_shore(entry.table, job.line_loads, members));
  }
  if (const auto lift = top.table("lift")) job.lifting = read_lifting(*lift, members);
}

solver::Job build_job(const toml::table& root, JobSource& source) {
  const JobTable top(root, schema_table(""), "", source);
  top.check_all();

  solver::Job job = read(top, fields::top);
  job.title_block = read_single(top, fields::title_block);
  const JobTable wall = top.table("wall").value();
  read_wall(wall, job);
  job.masonry = choose_masonry(top.tables("masonry"), wall);
  source.place("masonry", "masonry." + as_key(job.masonry.name));
  job.wall.openings = read_list(top, fields::opening);
  for (const NamedTable& entry : top.tables("lintel")) {
    job.lintels.push_back(read_lintel(entry.table, job));
    job.wall.lintels.push_back(job.lintels.back().shape);
  }
  job.wall.cut = read_single(top, fields::cut);
  for (const NamedTable& entry : top.tables("line_load")) {
    job.line_loads.push_back(read_on_wall(entry.table, fields::line_load, job.wall));
  }
  job.point_loads = read_list(top, fields::point_load);
  if (has_house(top)) read_house(top, read_weight_tables(top, source), job, source);
  const bool named = needs_members(top);
  const MemberTables members = named ? read_member_tables(top, source) : MemberTables{};
  read_members_of(top, members, source, job);
  if (named) fill_choices(members, job);
  job = solver::with_house_loads(std::move(job));  // what stands on a shore's floor goes along
  for (const NamedTable& entry : top.tables("needle")) {
    job.needles.push_back(read_needle(entry.table, job.needle_frames));
  }
  for (const NamedTable& entry : top.tables("footing"))
    job.footings.push_back(read_footing(entry.table, members));
  read_stages(top.tables("stage"), job, source);
  job.bracing = read_single(top, fields::bracing);
  job.removal = read_single(top, fields::removal);
  if (const auto checks = top.table("checks")) job.check_rules = read_check_rules(*checks);
  job.analysis = read_analysis(top);
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
  source.refuse_first(solver::find_faults(job));
  return job;
}

JobFile read_job_file(const std::filesystem::path& path) {
  // A file's name may be any bytes; notes and results are UTF-8.
  const std::string name = path.filename().string();
  const std::unique_ptr<char, decltype(&g_free)> shown(
      g_utf8_make_valid(name.data(), static_cast<gssize>(name.size())), &g_free);
  return {one_line(shown.get()), read_file(path)};
}

std::string sha256_of(std::string_view bytes) {
  const std::unique_ptr<GChecksum, decltype(&g_checksum_free)> sum(
      g_checksum_new(G_CHECKSUM_SHA256), &g_checksum_free);
  // GLib has the bytes of any kind of text as guchar.
  g_checksum_update(sum.get(), reinterpret_cast<const guchar*>(bytes.data()),
                    static_cast<gssize>(bytes.size()));
  return g_checksum_get_string(sum.get());
}

}  // namespace deadshore::io
