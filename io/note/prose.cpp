#include "io/note/chapters.h"
#include "io/note/wording.h"
#include "solver/spread/spread.h"

#include <algorithm>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

/// The chapters that are mostly words.
namespace deadshore::io {
namespace {

// One item a paragraph; line breaks within it mean nothing.

constexpr std::string_view at_once_assumed = R"(
Gravity and all loads act at once on the wall as cut, with the needles in place. The order of the
work is not followed: what the wall has already settled before the cut is not taken off.
)";

constexpr std::string_view stages_assumed = R"(
The work is followed stage by stage. In each stage gravity and the loads that then stand on the wall
act on what is then there; masonry that is taken out gives what it carried to what is left.

What is added later, a needle, packing or a dead shore, comes in without stress in the shape that
the wall has that day. Movements count from the wall without any load, so those as built are among
them; damage counts from the first stage.

Cracks do not remember: one that closes again in a later stage is sound again, and what has cracked
and been pointed is not known. Masonry, needles and props do not creep, and the day counts for the
packing alone, which hardens with age.

Needles come out one at a time as the stages say, and gently. Between two stages, while pockets are
cut, the beam is lifted or a needle is eased, nothing is analysed.

The safety without tension is of strength alone: it holds whatever the stiffness of the supports, if
each can carry what comes on it.
)";

constexpr std::string_view beam_assumed = R"(
The permanent beam is straight and unloaded when it is placed, bends as a beam with shear, and is
held upright. Its packing only presses, evenly across its flanges. Beams side by side share evenly.

Padstones are elastic and bedded fully on the piers.
)";

constexpr std::string_view always_assumed = R"(
Loads are characteristic, dead plus imposed, with a load factor of 1.0.

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

constexpr std::string_view frames_assumed = R"(
The wall holds each needle sideways and upright at the middle of its thickness: nothing else stops a
frame from swaying.

The wall's load is spread evenly over its thickness, or over the leaves named.

Props are pinned at head and foot and stand 1.5 degrees out of plumb. Soles run along the wall. Sole
and ground under a prop are springs; a foot or head that would have to be pulled lets go.

Moments and forces are of second order: what the frame gives under its load adds to them. The
buckling factor given here is that of the whole frame on its loads unfactored; its check is on
design loads.

A needle's stiffness under the wall is that of its frame with packing, soles and ground, found anew
with the wall until loads and stiffnesses agree.

Loads for the checks are factored from the largest that any method finds (by hand, uncracked and
cracked, if no needle gave, and in every what-if), by the permanent share that the hand sum has on
that needle.
)";

constexpr std::string_view given_needles_not_checked = R"(
The needles themselves: bending, shear, crushing of timber, turning over.

The props: their capacity at the extension used, out of plumb, off centre.

Plates, packing, and the floor or ground under the props, inside and out; cellars and drains.
)";

constexpr std::string_view frames_not_checked = R"(
The ground itself: nobody has looked at it. Its bearing is presumed from the kind named in the job;
cellars, drains, old trenches and soft spots under a sole are not known.

Suspended floors under props, which count as unyielding here, and whatever a tail is wedged against.

Needles sliding or turning over on their props, wedges and fixings; what the bracing of the props is
tied to, and knocks against them.

The state of the props: bent tubes, worn threads, wrong pins, missing plates.
)";

constexpr std::string_view beam_not_checked = R"(
The permanent beam, its padstones and the masonry under them. Do not size the beam on any load that
the wall seems to carry by itself here.
)";

constexpr std::string_view given_beam_not_checked = R"(
The piers under the padstones as they really are, bond, old repairs, flues and chases, and what is
under their footings: they carry the beam for good. Lifting and sliding the beam in, and whatever
holds it meanwhile. Fire and rust.
)";

constexpr std::string_view stages_not_followed = R"(
The stages of the work: cutting pockets, cutting out, lifting the beam, pinning up, easing the
needles. Each may load a needle more than the state analysed here.
)";

constexpr std::string_view stages_not_checked = R"(
Any other order of work than the one given, or a stage half done: a pocket cut before the needles
beside it are tight, a needle eased before the packing has the age assumed.
)";

constexpr std::string_view never_checked = R"(
Joists and other floors that lose their bearing with the cut.

The wall's stability sideways and out of its plane: wind, return walls, ties, the building's bracing
while the opening is made and after.

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
           "resists the arches' sideways push. If a return wall or a neighbour does hold an end, "
           "say so in the job.";
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
  const bool staged = job.analysis.sequence == solver::Sequence::staged;
  std::vector<std::string> sentences = items_of(always_assumed);
  const std::vector<std::string> of_sequence = items_of(staged ? stages_assumed : at_once_assumed);
  sentences.insert(sentences.begin() + 1, of_sequence.begin(), of_sequence.end());
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

/// What nobody has looked at of the dead shores, by whether their frames are known.
std::vector<std::string> shores_not_checked(const solver::Job& job) {
  std::vector<std::string> unknown;
  bool any_framed = false;
  for (const solver::DeadShore& shore : job.dead_shores) {
    if (shore.frame)
      any_framed = true;
    else
      unknown.push_back(shore.name);
  }
  std::vector<std::string> items;
  if (!unknown.empty())
    items.push_back("Anything of " + listed(unknown) +
                    ": the dead shore itself, what it stands on, and the joists over it.");
  if (any_framed)
    items.emplace_back(
        "The joists over the dead shores, bent the other way over the head plate, and bracing that "
        "keeps the shores from swaying or falling over.");
  return items;
}

}  // namespace

Chapter assumptions_chapter(const solver::JobResult& result) {
  const bool any_framed = std::ranges::any_of(
      result.job.needles, [](const auto& needle) { return needle.frame.has_value(); });
  const Blocks of_frames =
      any_framed ? Heading{"Of the needle frames"} + bullets(items_of(frames_assumed)) : Blocks();
  const Blocks of_beam = result.job.beam
                             ? Heading{"Of the permanent beam"} + bullets(items_of(beam_assumed))
                             : Blocks();
  const Blocks of_analyses = Heading{"Of the analyses"} + bullets(analysis_assumptions(result.job));
  const Blocks of_hand = Heading{"Of the hand method"} + bullets(solver::spread_assumptions());
  return {"assumptions", "Assumptions", of_analyses, of_hand + of_frames + of_beam};
}

Chapter not_checked_chapter(const solver::Job& job) {
  std::vector<std::string> given;
  for (const solver::Needle& needle : job.needles) {
    if (!needle.frame) given.push_back(needle.name);
  }
  const bool any_framed = given.size() < job.needles.size();
  std::vector<std::string> items;
  if (!any_framed) {
    items = items_of(given_needles_not_checked);
  } else {
    if (!given.empty()) {
      items.push_back("Anything of " + listed(given) +
                      ", whose stiffness is given outright: the needle itself, its props, plates, "
                      "packing, and the floor or ground under them.");
    }
    std::ranges::copy(items_of(frames_not_checked), std::back_inserter(items));
  }
  std::ranges::copy(shores_not_checked(job), std::back_inserter(items));
  const bool staged = job.analysis.sequence == solver::Sequence::staged;
  for (const std::string_view more :
       {job.beam ? given_beam_not_checked : beam_not_checked,
        staged ? stages_not_checked : stages_not_followed, never_checked}) {
    std::ranges::copy(items_of(more), std::back_inserter(items));
  }
  return {"not-checked", "What was not checked", bullets(items)};
}

Chapter cautions_chapter() {
  return {"cautions", "Cautions", bullets(items_of(cautions))};
}

Chapter parties_chapter() {
  Table content{"who-is-needed",
                "Before the work begins; local rules decide who must be asked and in which order",
                {"Who or what", "What for"}};
  content.add({"Structural engineer",
               "Answers for the permanent beam, its padstones, the piers and footings under them, "
               "and checks these temporary works. Sees the wall first."});
  content.add({"Building control",
               "Is told before the work begins and sees beam and bearings before they are covered. "
               "What must be applied for is a matter of local rules."});
  content.add({"Neighbours",
               "Where the wall is shared, or theirs stands on it or near it, they have a say: "
               "party walls have rules of their own in many places. Note the state of their side "
               "first, with pictures."});
  content.add(
      {"Owner and occupiers",
       "Agree to it in writing. Nobody is in the rooms above, beside or under while the wall hangs "
       "on needles. Listed buildings and leases may forbid it. Tell the insurer."});
  content.add({"Services in the wall",
               "Gas, water, electricity, flues, drains under the soles: found, cut off and proved "
               "dead by those who may."});
  content.add({"Asbestos and lead",
               "Looked for by someone who knows, before anything is broken: boards, flues, paint, "
               "plaster. If in doubt, stop."});
  content.add({"Exclusion zone",
               "A fence on both sides of the wall, as far out as a piece can fall and a prop can "
               "kick. Only those at work inside it, never alone."});
  content.add({"Inspection",
               "Someone competent who did not put them in inspects needles and props before "
               "masonry comes out, after every step and every morning, and writes it down."});
  return {"parties", "Who else is needed",
          content + Paragraph{"A short list, common practice, no source: the law of the place and "
                              "the engineer add to it.",
                              Tone::small}};
}

}  // namespace deadshore::io
