#include "tests/solver/shore_samples.h"

namespace deadshore::solver::testing {

TimberClass timber_c16() {
  return {"C16", 16, 17, 2.2, 3.2, 8000, 5400, 500, 310, 370};
}

TimberClass timber_c24() {
  return {"C24", 24, 21, 2.5, 4.0, 11000, 7400, 690, 350, 420};
}

Job shored_job() {
  Job job;
  job.title = "Invented shore";
  job.wall.length = 6000.0;
  job.wall.top = {{0.0, 5000.0}, {6000.0, 5000.0}};
  job.wall.cut = {1500.0, 4500.0, 2400.0};
  job.thickness = 215.0;
  job.masonry = {"invented brick", 19e-6, 1500.0, 0.2, 4.0, 0.1};
  job.line_loads = {{"floor", 2700.0, false, {0.0, 6000.0}, 2.0, 3.0}};
  job.needles = {{"N1", 2000.0, 150.0, 20e3}, {"N2", 4000.0, 150.0, 20e3}};

  ShoreFrame frame;
  frame.distance = 800.0;
  frame.x = {1000.0, 5000.0};
  frame.joist_span = 4000.0;
  frame.joist_spacing = 400.0;
  frame.joist_width = 50.0;
  frame.joist_level = 2600.0;
  frame.head = TimberMember{{100.0, 150.0}, timber_c24()};
  PropRow props;
  props.prop = {"B30", 1800.0, 3000.0, {60.3, 3.2}, {48.3, 3.2}, PropClass::b, {}, "invented"};
  props.base = 120.0;
  frame.uprights = props;
  frame.footing.sole.timber = {{225.0, 75.0}, timber_c24()};
  frame.footing.sole.length = frame.x.length();
  frame.footing.ground = {"firm ground", 0.3, false, "invented"};
  frame.footing.subgrade_modulus = 0.03;
  job.dead_shores = {{"floor shore", LineLoadId{0}, 1.0, {}, {}, frame}};
  return job;
}

Job stud_wall_job() {
  Job job = shored_job();
  ShoreFrame& frame = *job.dead_shores[0].frame;
  frame.head = TimberMember{{100.0, 100.0}, timber_c24()};
  frame.footing.sole.timber.section = {100.0, 50.0};
  StudRow studs;
  studs.stud = {{47.0, 100.0}, timber_c16()};
  studs.spacing = 400.0;
  studs.nogging = true;
  frame.uprights = studs;
  return job;
}

}  // namespace deadshore::solver::testing
