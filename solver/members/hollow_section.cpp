#include "solver/members/hollow_section.h"

#include "solver/members/fillet.h"

#include <cmath>
#include <numbers>

namespace deadshore::solver {

namespace {

constexpr double pi = std::numbers::pi;

/// Inertia and plastic modulus about one axis.
struct Bending {
  double I = 0.0;
  double W_pl = 0.0;
};

/// A full rectangle with corners rounded off: `h` deep, `b` wide.
Bending rounded_rectangle(double h, double b, double radius) {
  const Fillet corner{radius};
  const double arm = 0.5 * h - corner.centroid();
  return {b * h * h * h / 12.0 - 4.0 * corner.inertia_about(arm),
          0.25 * b * h * h - 4.0 * corner.area() * arm};
}

Bending rectangular_tube(double h, double b, double t) {
  const Bending outside = rounded_rectangle(h, b, 1.5 * t);
  const Bending inside = rounded_rectangle(h - 2.0 * t, b - 2.0 * t, t);
  return {outside.I - inside.I, outside.W_pl - inside.W_pl};
}

}  // namespace

SteelProperties rectangular_hollow_properties(const SteelSection& s) {
  const double t = s.tw;
  const Bending about_y = rectangular_tube(s.h, s.b, t);
  const Bending about_z = rectangular_tube(s.b, s.h, t);

  SteelProperties p;
  p.A = 2.0 * t * (s.b + s.h - 2.0 * t) - 4.0 * (Fillet{1.5 * t}.area() - Fillet{t}.area());
  p.I_y = about_y.I;
  p.I_z = about_z.I;
  p.W_el_y = 2.0 * p.I_y / s.h;
  p.W_el_z = 2.0 * p.I_z / s.b;
  p.W_pl_y = about_y.W_pl;
  p.W_pl_z = about_z.W_pl;

  const double corner = 1.25 * t;  // radius of the middle line
  const double perimeter = 2.0 * (s.b + s.h - 2.0 * t) - 2.0 * corner * (4.0 - pi);
  const double enclosed = (s.b - t) * (s.h - t) - corner * corner * (4.0 - pi);
  p.I_t = t * t * t * perimeter / 3.0 + 4.0 * enclosed * enclosed * t / perimeter;
  p.A_v = p.A * s.h / (s.b + s.h);
  return p;
}

SteelProperties circular_hollow_properties(const SteelSection& s) {
  const double D = s.h;
  const double d = D - 2.0 * s.tw;

  SteelProperties p;
  p.A = pi * (D * D - d * d) / 4.0;
  p.I_y = p.I_z = pi * (std::pow(D, 4) - std::pow(d, 4)) / 64.0;
  p.W_el_y = p.W_el_z = 2.0 * p.I_y / D;
  p.W_pl_y = p.W_pl_z = (D * D * D - d * d * d) / 6.0;
  p.I_t = 2.0 * p.I_y;
  p.A_v = 2.0 * p.A / pi;
  return p;
}

}  // namespace deadshore::solver
