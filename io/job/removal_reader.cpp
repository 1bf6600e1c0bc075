#include "io/job/removal_reader.h"

namespace deadshore::io {

solver::RemovalOptions read_removal(const JobTable& table) {
  return {.course_height = table.quantity("course_height"),
          .strip_width = table.quantity("strip_width"),
          .one_person_lift = table.quantity("one_person_lift"),
          .two_person_lift = table.quantity("two_person_lift"),
          .bulking = table.number("bulking")};
}

}  // namespace deadshore::io
