#include "solver/job/permanent_works.h"

#include "solver/job/needle_frame.h"

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

constexpr double full_age = 28.0;      // days
constexpr double youngest_bed = 0.5;   // days
constexpr double exponent_of_E = 0.3;  // EN 1992-1-1 (3.5)

}  // namespace

double hardened_strength_share(const DryPacking& packing, double age) {
  if (!(age > 0.0)) return 0.0;
  if (age >= full_age) return 1.0;
  return std::exp(packing.hardening * (1.0 - std::sqrt(full_age / age)));
}

double packing_bed(const DryPacking& packing, double age) {
  const double share = hardened_strength_share(packing, std::max(age, youngest_bed));
  return std::pow(share, exponent_of_E) * packing.E / packing.thickness;
}

double PermanentBeam::weight() const {
  return count * weight_of(member);
}

double PermanentBeam::bending_stiffness() const {
  return count * steel_E * member.properties.I_y;
}

double PermanentBeam::shear_stiffness() const {
  return count * steel_G * member.properties.A_v;
}

double PermanentBeam::flange_width() const {
  return count * member.section.b;
}

std::vector<LoadId> loads_of(const DeadShore& shore) {
  std::vector<LoadId> loads{shore.carries};
  loads.insert(loads.end(), shore.along_with.begin(), shore.along_with.end());
  return loads;
}

}  // namespace deadshore::solver
