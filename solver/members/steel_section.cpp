#include "solver/members/steel_section.h"

#include "solver/members/error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace deadshore::solver {

namespace {

using std::numbers::pi;

/// What lies between the two sides of a square corner and the quarter circle of radius `r` that
/// touches both: a root fillet, or what a rounded corner lacks. mm.
struct Fillet {
  double r = 0.0;

  [[nodiscard]] double area() const { return (1.0 - pi / 4.0) * r * r; }
  /// From either side to the centroid.
  [[nodiscard]] double centroid() const { return (10.0 - 3.0 * pi) / (12.0 - 3.0 * pi) * r; }
  /// Second moment of area about its own centroid.
  [[nodiscard]] double inertia() const {
    return (1.0 / 3.0 - pi / 16.0 - 1.0 / (9.0 * (4.0 - pi))) * r * r * r * r;
  }
  /// Second moment about an axis `distance` from its centroid.
  [[nodiscard]] double inertia_about(double distance) const {
    return inertia() + area() * distance * distance;
  }
};

constexpr double steel_density = 7850e-9;  // kg/mm3

void require(const SteelSection& s, bool holds, const char* due) {
  if (holds) return;
  const std::string found =
      s.is_hollow() ? fmt::format("h {}, b {}, t {} mm", s.h, s.b, s.tw)
                    : fmt::format("h {}, b {}, tw {}, tf {}, r {} mm", s.h, s.b, s.tw, s.tf, s.r);
  throw MemberError(s.name, found, due);
}

void require_sound(const SteelSection& s) {
  const bool finite = std::isfinite(s.h) && std::isfinite(s.b) && std::isfinite(s.tw) &&
                      std::isfinite(s.tf) && std::isfinite(s.r);
  require(s, finite && s.h > 0.0 && s.b > 0.0 && s.tw > 0.0 && s.tf > 0.0 && s.r >= 0.0,
          "dimensions above 0 are due");
  switch (s.kind) {
    case SectionKind::i_section:
      require(s, 2.0 * (s.tf + s.r) < s.h && s.tw + 2.0 * s.r < s.b,
              "flanges, web and root radii must fit into depth and width");
      break;
    case SectionKind::channel:
      require(s, 2.0 * (s.tf + s.r) < s.h && s.tw + s.r < s.b,
              "flanges, web and root radii must fit into depth and width");
      break;
    case SectionKind::rectangular_hollow:
      require(s, s.tw == s.tf, "one wall thickness is due");
      require(s, 4.0 * s.tw < s.h && 4.0 * s.tw < s.b,
              "walls must be thinner than a quarter of depth and width");
      break;
    case SectionKind::circular_hollow:
      require(s, s.tw == s.tf && s.h == s.b, "one diameter and one wall thickness are due");
      require(s, 2.0 * s.tw < s.h, "the wall must be thinner than half the diameter");
      break;
  }
}

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
    constexpr int halvings = 60;
    for (int i = 0; i < halvings && high - low > 1e-3; ++i) {
      axis = 0.5 * (low + high);
      (web + flange_moments(s, s.tw, axis, axis).area < 0.5 * A ? low : high) = axis;
    }
    return web * (axis - 0.5 * s.tw) + flange_moments(s, s.tw, axis, axis).first +
           flange_moments(s, axis, s.b, axis).first;
  }
  return 0.5 * s.h * (axis * axis + (s.tw - axis) * (s.tw - axis)) +
         flange_moments(s, s.tw, s.b, axis).first;
}

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

// I sections and channels with parallel flanges; no masses and radii of gyration yet.
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

SteelProperties properties_by_kind(const SteelSection& section) {
  switch (section.kind) {
    case SectionKind::i_section:
      return i_section_properties(section);
    case SectionKind::channel:
      return channel_properties(section);
    case SectionKind::rectangular_hollow:
      return rectangular_hollow_properties(section);
    case SectionKind::circular_hollow:
      return circular_hollow_properties(section);
  }
  return {};
}

}  // namespace

SteelProperties properties_of(const SteelSection& section) {
  require_sound(section);
  SteelProperties p = properties_by_kind(section);
  p.mass = p.A * steel_density * 1000.0;
  p.i_y = std::sqrt(p.I_y / p.A);
  p.i_z = std::sqrt(p.I_z / p.A);
  return p;
}

}  // namespace deadshore::solver
