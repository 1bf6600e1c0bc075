#include "io/job/schema.h"

#include "io/job/house_schema.h"
#include "io/job/lift_schema.h"
#include "io/job/needle_frame_schema.h"
#include "io/job/permanent_works_schema.h"
#include "io/job/removal_schema.h"
#include "io/job/schema_parts.h"
#include "io/job/shore_frame_schema.h"
#include "io/job/title_block_schema.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <stdexcept>
#include <vector>

namespace deadshore::io {

namespace {

using namespace schema_parts;

constexpr std::array root_keys{
    SchemaKey{.name = "title",
              .kind = text,
              .example = "Mill cottage, kitchen wall",
              .required = true,
              .meaning = "What the job is called in everything that comes out."},
    SchemaKey{.name = "tables",
              .kind = texts,
              .example = R"(["my_sections.toml"])",
              .meaning =
                  "Files of your own sections, timber, props, ground, weights and uses, seen "
                  "from the job file; a known name replaces the known one."},
};

constexpr std::array wall_keys{
    required("length", length, "m", "6 m", "above 0", "The wall from its left end to its right."),
    required("height", length, "m", "5.4 m", "above 0",
             "From the base to the highest point of the wall."),
    required("thickness", length, "mm", "215 mm", "above 0", "Through the wall."),
    SchemaKey{.name = "masonry",
              .kind = text,
              .example = "soft brick in lime",
              .required = true,
              .meaning = "The name of the [masonry.NAME] table that the wall is built of."},
    choice_key("left_end", false, "free", "free, held",
               "Whether a return wall or a neighbour stops the left end moving sideways above the "
               "soffit."),
    choice_key("right_end", false, "free", "free, held", "The same at the right end."),
    SchemaKey{.name = "outline",
              .kind = KeyKind::outline,
              .example = R"([["0 m", "5.2 m"], ["3 m", "8 m"], ["6 m", "5.2 m"]])",
              .range = "from the left end to the right; two points at the same place are a step",
              .meaning = "The wall's top edge as points, each along the wall and up; without it "
                         "the top is level at `height`."},
};

constexpr std::array masonry_keys{
    required("unit_weight", volume, "kN/m3", "19 kN/m3", "0 or more", "Weight of the masonry."),
    required("E", stress, "N/mm2", "1500 N/mm2", "above 0", "Modulus of elasticity."),
    SchemaKey{.name = "nu",
              .kind = number,
              .example = "0.2",
              .required = true,
              .range = "0 to below 0.5",
              .meaning = "Poisson's ratio."},
    required("compressive_strength", stress, "N/mm2", "2.4 N/mm2", "above 0",
             "What the masonry bears in compression."),
    required("tensile_strength", stress, "N/mm2", "0.05 N/mm2", "0 or more",
             "What the masonry bears in tension before it cracks."),
};

constexpr std::array opening_keys{
    name_key("stair window", "What the opening is called."),
    required("left", length, "m", "1.1 m", "0 or more", "The opening's left jamb."),
    required("sill", length, "m", "3.7 m", "0 or more", "The opening's lower edge."),
    required("width", length, "m", "0.9 m", "above 0", "Between the jambs."),
    required("height", length, "m", "1.4 m", "above 0",
             "From the sill to the highest point of the head."),
    optional("rise", length, "mm", "120 mm", "0 mm", "0 or more",
             "Rise of a segmental arch above its springings; 0 is a flat head."),
};

constexpr std::array lintel_keys{
    name_key("stair lintel", "What the lintel is called."),
    SchemaKey{.name = "opening",
              .kind = text,
              .example = "stair window",
              .required = true,
              .meaning = "The name of the flat-headed opening it spans."},
    choice_key("material", true, "", "concrete, steel, timber, stone", "What it is made of."),
    required("depth", length, "mm", "150 mm", "above 0", "From the head upwards."),
    required("bearing", length, "mm", "150 mm", "above 0", "Into the wall on each side."),
    optional("E", stress, "N/mm2", "30000 N/mm2", "", "above 0",
             "Modulus of elasticity; by default that of the material."),
    SchemaKey{.name = "nu",
              .kind = number,
              .example = "0.2",
              .range = "0 to below 0.5",
              .meaning = "Poisson's ratio; by default that of the material."},
    optional("unit_weight", volume, "kN/m3", "25 kN/m3", "", "0 or more",
             "Weight; by default that of the material."),
    optional("thickness", length, "mm", "100 mm", "", "above 0",
             "Through the wall; by default the wall's."),
};

constexpr std::array cut_keys{
    required("left", length, "m", "0.8 m", "inside the wall", "Left jamb of the cut."),
    required("right", length, "m", "4.4 m", "inside the wall", "Right jamb of the cut."),
    required("soffit", length, "m", "2.4 m", "above 0, below the wall's top",
             "Masonry below this level between the jambs comes out."),
};

constexpr std::array line_load_keys{
    name_key("roof", "What the load is called."),
    level_or_top("Where it comes into the wall, above the base; \"top\" follows the wall's "
                 "top edge."),
    from_key,
    to_key,
    required("dead", line, "kN/m", "3.1 kN/m", "0 or more", "Dead load, measured level."),
    optional("imposed", line, "kN/m", "2.2 kN/m", "0 kN/m", "0 or more",
             "Imposed load, measured level."),
};

constexpr std::array point_load_keys{
    name_key("purlin", "What the load is called."),
    required("x", length, "m", "3.9 m", "inside the wall", "Its middle, from the left end."),
    required("level", length, "m", "5.2 m", "on masonry", "Where it comes into the wall."),
    required("bearing", length, "mm", "200 mm", "above 0", "The length of wall it bears on."),
    required("dead", force, "kN", "6.5 kN", "0 or more", "Dead load."),
    optional("imposed", force, "kN", "4 kN", "0 kN", "0 or more", "Imposed load."),
};

constexpr std::array needle_keys{
    name_key("N1", "What the needle is called."),
    required("x", length, "m", "1.2 m", "inside the cut", "Its middle, from the wall's left end."),
    optional("bearing_width", length, "mm", "152 mm", "", "above 0, up to the needle's width",
             "The length of wall that bears on it; by default the width of its frame's needle."),
    SchemaKey{.name = "frame",
              .kind = text,
              .example = "F1",
              .meaning = "The name of the [needle_frame.NAME] table it is one of."},
    optional("stiffness", stiffness, "kN/mm", "20 kN/mm", "", "above 0",
             "In place of `frame`: load that pushes needle, props and ground down by a unit of "
             "length."),
    optional("slack", length, "mm", "2 mm", "0 mm", "0 or more",
             "Gap to close before the needle bears."),
    optional("preload", force, "kN", "5 kN", "0 kN", "0 or more, and 0 with slack",
             "Load it is jacked to before the cut."),
};

constexpr std::array analysis_keys{
    optional("mesh", length, "mm", "100 mm", "100 mm", "above 0", "Size of the elements."),
    choice_key("element", false, "8-node", "4-node, 8-node", "Nodes of each element."),
    SchemaKey{.name = "masonry",
              .kind = choices,
              .fallback = "uncracked, cracked",
              .choices = "uncracked, cracked",
              .meaning = "How the masonry is taken: as elastic, or as cracking in tension."},
    choice_key("sequence", false, "staged", "staged, at once",
               "Whether the work is followed stage by stage, or all loads come at once on the wall "
               "as cut."),
};

constexpr std::array tables{
    SchemaTable{"", TableForm::root, true, "The job.", root_keys},
    SchemaTable{"title_block", TableForm::single, false,
                "What heads the design note; what is not given is left blank there.",
                title_block_keys},
    SchemaTable{"wall", TableForm::single, true, "The wall as it stands.", wall_keys},
    SchemaTable{"masonry", TableForm::named, true, "A kind of masonry.", masonry_keys},
    SchemaTable{"opening", TableForm::list, false, "A window or door that is there already.",
                opening_keys},
    SchemaTable{"lintel", TableForm::list, false, "A lintel over an opening.", lintel_keys},
    SchemaTable{"cut", TableForm::single, true, "What comes out.", cut_keys},
    SchemaTable{"line_load", TableForm::list, false, "A load along the wall, such as a floor.",
                line_load_keys},
    SchemaTable{"point_load", TableForm::list, false, "A load at one place, such as a purlin.",
                point_load_keys},
    SchemaTable{"floor", TableForm::list, false, "A floor that bears on the wall.", floor_keys},
    SchemaTable{"loft", TableForm::list, false, "The floor of a loft that bears on the wall.",
                loft_keys},
    SchemaTable{"roof", TableForm::list, false, "A roof slope that bears on the wall.", roof_keys},
    SchemaTable{"roof.purlin", TableForm::list, false, "A purlin of the slope, on the wall.",
                purlin_keys},
    SchemaTable{"partition", TableForm::list, false,
                "A partition on the joists of a floor that bears on the wall.", partition_keys},
    SchemaTable{"upper_wall", TableForm::list, false, "Masonry on the wall that is not drawn.",
                upper_wall_keys},
    SchemaTable{"chimney", TableForm::list, false, "A chimney breast and its stack, on the wall.",
                chimney_keys},
    SchemaTable{"contents", TableForm::list, false,
                "Something heavy on the joists of a floor that bears on the wall.", contents_keys},
    SchemaTable{"needle", TableForm::list, true, "A needle under the soffit.", needle_keys},
    SchemaTable{"needle_frame", TableForm::named, false,
                "A kind of needle with its props and what they stand on.", needle_frame_keys},
    SchemaTable{"needle_frame.prop", TableForm::list, true, "A prop of the frame.",
                needle_prop_keys},
    SchemaTable{"needle_frame.prop.capacity", TableForm::single, false,
                "A supplier's safe loads of the prop.", capacity_keys},
    SchemaTable{"beam", TableForm::single, false, "The permanent beam under the soffit.",
                beam_keys},
    SchemaTable{"beam.padstone", TableForm::single, true, "What the beam bears on, at both ends.",
                padstone_keys},
    SchemaTable{"beam.packing", TableForm::single, false,
                "Dry packing between the beam and the soffit.", packing_keys},
    SchemaTable{"dead_shore", TableForm::list, false,
                "Props under the joists of a floor, that take it off the wall.", dead_shore_keys},
    SchemaTable{"dead_shore.frame", TableForm::single, false,
                "What the dead shore is made of: a head plate on props or studs.",
                shore_frame_keys},
    SchemaTable{"lift", TableForm::single, false, "How the permanent beam goes up.", lift_keys},
    SchemaTable{"lift.lifter", TableForm::list, true, "What the beam is lifted with.", lifter_keys},
    SchemaTable{"lift.lifter.capacity", TableForm::single, true,
                "What the lifter may lift, from its plate.", lifter_capacity_keys},
    SchemaTable{"lift.stand", TableForm::list, false,
                "What holds the beam while it waits; two or more are due.", stand_keys},
    SchemaTable{"lift.stand.fixing", TableForm::single, true,
                "What holds the stand together; its whole load goes through all of them.",
                fixing_keys},
    SchemaTable{"stage", TableForm::list, false,
                "A stage of the work, in order; without any, the usual ones of `deadshore stages`.",
                stage_keys},
    SchemaTable{"removal", TableForm::single, false, "How what comes out is taken apart.",
                removal_keys},
    SchemaTable{"checks", TableForm::single, false, "By which rules members are checked.",
                check_keys},
    SchemaTable{"analysis", TableForm::single, false, "How it is worked out.", analysis_keys},
};

/// Letters to change, add, drop or swap with the next to turn one word into the other.
std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before;
  std::vector<std::size_t> last(b.size() + 1);
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({change, last[j] + 1, row[j - 1] + 1});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
    }
    before = last;
    std::swap(last, row);
  }
  return last[b.size()];
}

}  // namespace

std::span<const SchemaTable> job_schema() {
  return tables;
}

std::string_view parent_of(const SchemaTable& table) {
  const std::size_t dot = table.name.find_last_of('.');
  return dot == std::string_view::npos ? "" : table.name.substr(0, dot);
}

std::string_view own_name(const SchemaTable& table) {
  const std::size_t dot = table.name.find_last_of('.');
  return dot == std::string_view::npos ? table.name : table.name.substr(dot + 1);
}

const SchemaTable& schema_table(std::string_view name) {
  const auto* found = std::find_if(tables.begin(), tables.end(),
                                   [&](const SchemaTable& table) { return table.name == name; });
  if (found == tables.end())
    throw std::out_of_range(fmt::format("no table [{}] in the schema", name));
  return *found;
}

const SchemaKey* find_key(const SchemaTable& table, std::string_view name) {
  const auto found = std::find_if(table.keys.begin(), table.keys.end(),
                                  [&](const SchemaKey& key) { return key.name == name; });
  return found == table.keys.end() ? nullptr : &*found;
}

std::string_view nearest_name(std::string_view name, std::span<const std::string_view> known) {
  // A longer name than any key is no nearer for its rest, and the sum stays small.
  const std::string_view start = name.substr(0, 64);
  return *std::min_element(known.begin(), known.end(), [&](std::string_view a, std::string_view b) {
    return edit_distance(start, a) < edit_distance(start, b);
  });
}

}  // namespace deadshore::io
