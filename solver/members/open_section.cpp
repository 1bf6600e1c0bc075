#include "solver/members/open_section.h"

#include "solver/members/fillet.h"

#include <algorithm>
#include <cmath>

namespace deadshore::solver {

namespace {

double cubed(double x) {
  return x * x * x;
}

/// Torsion of two flanges and a web, and what the junctions add: `junction` is the factor alpha and
/// `circle` the diameter of the circle inscribed in a junction.
double torsion(const SteelSection& s, double junction, double circle) {
  return 2.0 / 3.0 * s.b * cubed(s.tf) + (s.h - 2.0 * s.tf) * cubed(s.tw) / 3.0 +
         2.0 * junction * std::pow(circle, 4) - 0.420 * std::pow(s.tf, 4);
}

/// Shear area of 6.2.6(3) with `roots` fillets beside the web counted into it, at least h_w t_w
/// (eta = 1.0, UK NA and the safe side).
double web_shear_area(const SteelSection& s, double A, int roots) {
  const double rolled = A - 2.0 * s.b * s.tf + (s.tw + roots * s.r) * s.tf;
  return std::max(rolled, (s.h - 2.0 * s.tf) * s.tw);
}

/// The steel that an upright `x` from the back of a channel's web meets, mm.
double channel_height_at(const SteelSection& s, double x) {
  if (x < s.tw) return s.h;
  const double from_tip = std::max(s.tw + s.r - x, 0.0);
  return 2.0 * (s.tf + s.r - std::sqrt(s.r * s.r - from_tip * from_tip));
}

/// Area and first moment about the upright `axis` of a channel's flanges and roots between two
/// uprights right of the web, by the midpoint rule; all distances counted positive.
struct Moments {
  double area = 0.0;
  double first = 0.0;
};
Moments flange_moments(const SteelSection& s, double from, double to, double axis) {
  constexpr int strips = 100;
  const double width = (to - from) / strips;
  Moments sum;
  for (int i = 0; i < strips; ++i) {
    const double x = from + (i + 0.5) * width;
    const double area = channel_height_at(s, x) * width;
    sum.area += area;
    sum.first += area * std::abs(x - axis);
  }
  return sum;
}

/// Plastic modulus of a channel about its upright axis, which halves the area `A`.
double channel_weak_plastic_modulus(const SteelSection& s, double A) {
  const double web = s.h * s.tw;
  double axis = 0.5 * A / s.h;  // where it lies in the web
  if (web < 0.5 * A) {
    double low = s.tw;
    double high = s.b;
    while (high - low > 1e-3) {
      axis = 0.5 * (low + high);
      (web + flange_moments(s, s.tw, axis, axis).area < 0.5 * A ? low : high) = axis;
    }
    return web * (axis - 0.5 * s.tw) + flange_moments(s, s.tw, axis, axis).first +
           flange_moments(s, axis, s.b, axis).first;
  }
  return 0.5 * s.h * (axis * axis + (s.tw - axis) * (s.tw - axis)) +
         flange_moments(s, s.tw, s.b, axis).first;
}

}  // namespace

SteelProperties i_section_properties(const SteelSection& s) {
  const Fillet root{s.r};
  const double web = s.h - 2.0 * s.tf;
  const double up = 0.5 * web - root.centroid();  // of a root's centroid from the level axis
  const double out = 0.5 * s.tw + root.centroid();
  const double lever = s.h - s.tf;

  SteelProperties p;
  p.A = 2.0 * s.b * s.tf + web * s.tw + 4.0 * root.area();
  p.I_y = (s.b * cubed(s.h) - (s.b - s.tw) * cubed(web)) / 12.0 + 4.0 * root.inertia_about(up);
  p.I_z = (2.0 * s.tf * cubed(s.b) + web * cubed(s.tw)) / 12.0 + 4.0 * root.inertia_about(out);
  p.W_el_y = 2.0 * p.I_y / s.h;
  p.W_el_z = 2.0 * p.I_z / s.b;
  p.W_pl_y = s.b * s.tf * lever + 0.25 * s.tw * web * web + 4.0 * root.area() * up;
  p.W_pl_z = 0.5 * s.tf * s.b * s.b + 0.25 * web * s.tw * s.tw + 4.0 * root.area() * out;

  const double junction = -0.042 + 0.2204 * s.tw / s.tf + 0.1355 * s.r / s.tf -
                          0.0865 * s.r * s.tw / (s.tf * s.tf) -
                          0.0725 * s.tw * s.tw / (s.tf * s.tf);
  const double circle =
      ((s.tf + s.r) * (s.tf + s.r) + (s.r + 0.25 * s.tw) * s.tw) / (2.0 * s.r + s.tf);
  p.I_t = torsion(s, junction, circle);
  p.I_w = s.tf * cubed(s.b) * lever * lever / 24.0;
  p.A_v = web_shear_area(s, p.A, 2);
  return p;
}

SteelProperties channel_properties(const SteelSection& s) {
  const Fillet root{s.r};
  const double web = s.h - 2.0 * s.tf;
  const double up = 0.5 * web - root.centroid();
  const double lever = s.h - s.tf;
  const double flange = s.b - s.tw;

  SteelProperties p;
  p.A = 2.0 * s.b * s.tf + web * s.tw + 2.0 * root.area();
  p.I_y = (s.b * cubed(s.h) - flange * cubed(web)) / 12.0 + 2.0 * root.inertia_about(up);
  p.W_el_y = 2.0 * p.I_y / s.h;
  p.W_pl_y = s.b * s.tf * lever + 0.25 * s.tw * web * web + 2.0 * root.area() * up;

  const double root_x = s.tw + root.centroid();
  const double centroid = (0.5 * s.h * s.tw * s.tw + 2.0 * flange * s.tf * (s.tw + 0.5 * flange) +
                           2.0 * root.area() * root_x) /
                          p.A;
  p.I_z = (s.h * cubed(s.tw) + 2.0 * s.tf * cubed(flange)) / 12.0 +
          s.h * s.tw * std::pow(centroid - 0.5 * s.tw, 2) +
          2.0 * flange * s.tf * std::pow(s.tw + 0.5 * flange - centroid, 2) +
          2.0 * root.inertia_about(root_x - centroid);
  p.W_el_z = p.I_z / (s.b - centroid);
  p.W_pl_z = channel_weak_plastic_modulus(s, p.A);

  const double junction = -0.0908 + 0.2621 * s.tw / s.tf + 0.1231 * s.r / s.tf -
                          0.0752 * s.tw * s.r / (s.tf * s.tf) -
                          0.0945 * s.tw * s.tw / (s.tf * s.tf);
  const double circle =
      2.0 * (3.0 * s.r + s.tw + s.tf - std::sqrt(2.0 * (2.0 * s.r + s.tw) * (2.0 * s.r + s.tf)));
  p.I_t = torsion(s, junction, circle);
  const double offset = centroid - 0.5 * s.tw;
  p.I_w = 0.25 * lever * lever *
          (p.I_z - p.A * offset * offset * (lever * lever * p.A / (4.0 * p.I_y) - 1.0));
  p.A_v = web_shear_area(s, p.A, 1);
  return p;
}

}  // namespace deadshore::solver
