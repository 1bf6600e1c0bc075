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
  const double hardened = age * days_at_20_degrees(packing.curing_temperature());
  if (!(hardened > 0.0)) return 0.0;
  if (hardened >= full_age) return 1.0;
  return std::exp(packing.hardening * (1.0 - std::sqrt(full_age / hardened)));
}

double days_at_20_degrees(double temperature) {
  constexpr double activation = 4000.0;  // K, (B.10)
  constexpr double zero = 273.0;
  return std::exp(activation / (zero + 20.0) - activation / (zero + temperature));
}

double strength_at(const DryPacking& packing, double age) {
  constexpr double mean_above_characteristic = 8.0;  // N/mm2, EN 1992-1-1 table 3.1
  const double mean = packing.strength + mean_above_characteristic;
  const double share = hardened_strength_share(packing, age);
  return std::max(0.0, share * mean - mean_above_characteristic);
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
