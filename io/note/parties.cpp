#include "io/note/sections.h"

namespace deadshore::io {

Chapter parties_section() {
  Table content{"who-is-needed",
                "Before the work begins; local rules decide who must be asked and in which order",
                {{"Who or what"}, {"What for"}},
                {}};
  content.add({"Structural engineer",
               "Answers for the permanent beam, its padstones, the piers and footings under them, "
               "and checks these temporary works. Sees the wall first."});
  content.add({"Building control",
               "Is told before the work begins and sees beam and bearings before they are covered. "
               "What must be applied for is a matter of local rules."});
  content.add(
      {"Neighbours",
       "Where the wall is shared, or theirs stands on it or near it, they have a say: party "
       "walls have rules of their own in many places. Note the state of their side first, "
       "with pictures."});
  content.add(
      {"Owner and occupiers",
       "Agree to it in writing. Nobody is in the rooms above, beside or under while the wall "
       "hangs on needles. Listed buildings and leases may forbid it. Tell the insurer."});
  content.add({"Services in the wall",
               "Gas, water, electricity, flues, drains under the soles: found, cut off and proved "
               "dead by those who may."});
  content.add({"Asbestos and lead",
               "Looked for by someone who knows, before anything is broken: boards, flues, paint, "
               "plaster. If in doubt, stop."});
  content.add({"Exclusion zone",
               "A fence on both sides of the wall, as far out as a piece can fall and a prop can "
               "kick. Only those at work inside it, never alone."});
  content.add(
      {"Inspection",
       "Someone competent who did not put them in inspects needles and props before masonry "
       "comes out, after every step and every morning, and writes it down."});
  return section("parties", "Who else is needed",
                 table(content) +
                     paragraph("A short list, common practice, no source: the law of the place and "
                               "the engineer add to it.",
                               "small"));
}

}  // namespace deadshore::io
