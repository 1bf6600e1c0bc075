#include "io/note/sections.h"
#include "io/note/wording.h"
#include "solver/spread/spread.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

/// The chapters that are mostly words.
namespace deadshore::io {
namespace {

// One item a paragraph; line breaks within it mean nothing.

constexpr std::string_view always_assumed = R"(
Loads are characteristic, dead plus imposed, with a load factor of 1.0.

Gravity and all loads act at once on the wall as cut, with the needles in place. The order of the
work is not followed: what the wall has already settled before the cut is not taken off.

The wall is a flat panel in plane stress, of one thickness, sound and solid; masonry is treated as
one continuous material. Leaves that are not tied, old flues, rubble fill and bulges are not known
to it.

The bases of the piers are fixed; the ground does not give.

Each needle is an upright spring spread evenly over its bearing. It can push up or do nothing; it
does not hold the wall sideways and does not slide.

Uncracked masonry is linear elastic, in tension too.

Crushing is not modelled: compare the largest compression with the strength given. Sliding along
joints and buckling of the wall out of its plane are not modelled either.
)";

constexpr std::string_view not_checked = R"(
The needles themselves: bending, shear, crushing of timber, turning over.

The props: their capacity at the extension used, out of plumb, off centre.

Plates, packing, and the floor or ground under the props, inside and out; cellars and drains.

Joists and other floors that lose their bearing with the cut.

The permanent beam, its padstones and the piers under them. Do not size the beam on any load that
the wall seems to carry by itself here.

The wall's stability sideways and out of its plane: wind, return walls, ties, the building's bracing
while the opening is made and after.

The stages of the work: cutting pockets, cutting out, lifting the beam, pinning up, easing the
needles. Each may load a needle more than the state analysed here.

Knocks, vibration, water, frost and fire during the works.
)";

constexpr std::string_view cautions = R"(
Walls fall without warning and kill. Temporary works are to be designed by someone competent to do
so, and this note is to be checked by a structural engineer who has seen the wall.

It is only as good as what was put in. Open up and measure: thickness, leaves, joist directions,
what really stands on the wall.

Have the approvals the law asks for: building control, the neighbours where a wall is shared or
near, the local codes and the rules on safety at work.

Have the props and needles inspected when they are in and tightened, before anything is cut, and
every day after. Watch the wall for cracks and the needles for movement.

Keep everyone who is not needed out from under and beside the wall. Turn off gas, water and
electricity in it first.

Stop, and prop, if anything moves more than this note says.
)";

std::vector<std::string> items_of(std::string_view paragraphs) {
  std::vector<std::string> items;
  paragraphs = paragraphs.substr(1, paragraphs.size() - 2);  // the line breaks round them
  while (!paragraphs.empty()) {
    const std::size_t end = std::min(paragraphs.find("\n\n"), paragraphs.size());
    items.emplace_back(paragraphs.substr(0, end));
    paragraphs.remove_prefix(std::min(end + 2, paragraphs.size()));
  }
  return items;
}

std::string ends_sentence(const solver::Job& job) {
  const bool left = job.left_end == solver::WallEnd::held;
  const bool right = job.right_end == solver::WallEnd::held;
  if (!left && !right) {
    return "Both ends of the wall are free: nothing but the piers' own weight and stiffness "
           "resists "
           "the arches' sideways push. If a return wall or a neighbour does hold an end, say so in "
           "the job.";
  }
  const std::string held = left && right ? "Both ends of the wall are"
                           : left        ? "The left end of the wall is"
                                         : "The right end of the wall is";
  return held +
         " held sideways above the soffit, at every height and without giving. What holds it must "
         "be there, bonded in, and able to take the sideways push given with the analyses; if it "
         "is not, the result is void.";
}

std::vector<std::string> analysis_assumptions(const solver::Job& job) {
  std::vector<std::string> sentences = items_of(always_assumed);
  sentences.push_back(ends_sentence(job));
  if (std::ranges::count(job.analysis.masonry, solver::MasonryModel::cracked) > 0) {
    sentences.push_back("Cracked masonry takes no more tension than its tensile strength (" +
                        significant(job.masonry.tensile_strength, 3) +
                        " N/mm\u00b2) in any direction, and opens freely beyond.");
  }
  if (!job.lintels.empty()) {
    sentences.emplace_back("Lintels are elastic and fully bonded to the masonry round them.");
  }
  return sentences;
}

}  // namespace

Html assumptions_section(const solver::JobResult& result) {
  const Html body =
      element("h3", text("Of the analyses")) + bullets(analysis_assumptions(result.job)) +
      element("h3", text("Of the hand method")) + bullets(solver::spread_assumptions());
  return section("assumptions", "Assumptions", body);
}

Html not_checked_section() {
  return section("not-checked", "What was not checked", bullets(items_of(not_checked)));
}

Html cautions_section() {
  return section("cautions", "Cautions", bullets(items_of(cautions)));
}

}  // namespace deadshore::io
