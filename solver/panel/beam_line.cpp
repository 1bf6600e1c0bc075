#include "solver/panel/beam_line.h"

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

double length_of(const BeamLine& beam, int element) {
  const std::size_t e = static_cast<std::size_t>(element);
  return beam.x[e + 1] - beam.x[e];
}

int element_at(const BeamLine& beam, double x) {
  const auto next = std::upper_bound(beam.x.begin(), beam.x.end(), x);
  const int element = static_cast<int>(next - beam.x.begin()) - 1;
  return std::clamp(element, 0, beam.node_count() - 2);
}

double shear_parameter(const BeamLine& beam, double length) {
  return 12.0 * beam.EI / (beam.GA * length * length);
}

/// Movement up at `s` (0 to 1) of an element for unit (rotation, up) of its two nodes; rotations
/// in radians.
std::array<double, 4> shape_at(double s, double length, double phi) {
  const double over = 1.0 / (1.0 + phi);
  const double s2 = s * s;
  const double s3 = s2 * s;
  return {length * over * (s - 2.0 * s2 + s3 + 0.5 * phi * (s - s2)),
          over * (1.0 - 3.0 * s2 + 2.0 * s3 + phi * (1.0 - s)),
          length * over * (-s2 + s3 + 0.5 * phi * (s2 - s)),
          over * (3.0 * s2 - 2.0 * s3 + phi * s)};
}

}  // namespace

double BeamLine::rotation_length() const {
  return (x.back() - x.front()) / (node_count() - 1);
}

BeamLine make_beam_line(int first_node, double from, double to, double size, double EI, double GA,
                        double weight) {
  BeamLine beam{first_node, {}, EI, GA, weight};
  const int elements = std::max(2, static_cast<int>(std::ceil((to - from) / size - 1e-9)));
  for (int i = 0; i <= elements; ++i) beam.x.push_back(from + (to - from) * i / elements);
  return beam;
}

Eigen::Matrix4d element_stiffness(const BeamLine& beam, int element) {
  const double L = length_of(beam, element);
  const double phi = shear_parameter(beam, L);
  const double k = beam.EI / ((1.0 + phi) * L * L * L);
  Eigen::Matrix4d stiffness;
  stiffness << (4.0 + phi) * L * L, 6.0 * L, (2.0 - phi) * L * L, -6.0 * L,  //
      6.0 * L, 12.0, 6.0 * L, -12.0,                                         //
      (2.0 - phi) * L * L, 6.0 * L, (4.0 + phi) * L * L, -6.0 * L,           //
      -6.0 * L, -12.0, -6.0 * L, 12.0;
  const double turn = 1.0 / beam.rotation_length();
  const Eigen::Vector4d scale(turn, 1.0, turn, 1.0);
  return k * scale.asDiagonal() * stiffness * scale.asDiagonal();
}

void add_rise(const BeamLine& beam, double x, LinearForm& form, double factor) {
  const int element = element_at(beam, x);
  const double L = length_of(beam, element);
  const double s = (x - beam.x[static_cast<std::size_t>(element)]) / L;
  const auto shape = shape_at(s, L, shear_parameter(beam, L));
  const double turn = 1.0 / beam.rotation_length();
  for (std::size_t i = 0; i < 2; ++i) {
    const int node = beam.first_node + element + static_cast<int>(i);
    form.add(node, 0, factor * turn * shape[2 * i]);
    form.add(node, 1, factor * shape[2 * i + 1]);
  }
}

double rise_at(const BeamLine& beam, double x, const Eigen::VectorXd& u) {
  LinearForm rise;
  add_rise(beam, x, rise);
  return rise.of(u);
}

void add_weight(const BeamLine& beam, Eigen::VectorXd& load) {
  for (int element = 0; element + 1 < beam.node_count(); ++element) {
    const double L = length_of(beam, element);
    const double turn = beam.weight * L * L / (12.0 * beam.rotation_length());
    const int node = beam.first_node + element;
    load(2 * node) -= turn;
    load(2 * node + 1) -= 0.5 * beam.weight * L;
    load(2 * node + 2) += turn;
    load(2 * node + 3) -= 0.5 * beam.weight * L;
  }
}

}  // namespace deadshore::solver
