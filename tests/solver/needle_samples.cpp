#include "tests/solver/needle_samples.h"

namespace deadshore::solver {

NeedleFrame sample_needle() {
  TimberClass c24;
  c24.name = "C24";
  c24.f_m_k = 24.0;
  c24.f_c_0_k = 21.0;
  c24.f_c_90_k = 2.5;
  c24.f_v_k = 4.0;
  c24.E_0_mean = 11000.0;
  c24.E_0_05 = 7400.0;
  c24.G_mean = 690.0;
  c24.rho_k = 350.0;
  c24.rho_mean = 420.0;

  NeedleProp prop;
  prop.mark = "inner";
  prop.distance = 600.0;
  prop.prop = {"B35", 2000.0, 3500.0, {60.3, 3.2}, {48.3, 3.2}, PropClass::b, {}, "invented"};
  prop.footing.sole.timber.section = {225.0, 75.0};
  prop.footing.sole.timber.strength_class = c24;
  prop.footing.sole.length = 900.0;
  prop.footing.sole.prop_base = 120.0;
  prop.footing.ground = {"stiff clay", 0.15, false, "invented"};
  prop.footing.subgrade_modulus = 0.03;

  NeedleFrame frame;
  frame.name = "sample";
  frame.member = steel_member(
      {"UC 152x152x23", SectionKind::i_section, 152.4, 152.2, 5.8, 6.8, 7.6}, SteelGrade::s275);
  frame.props = {prop, prop};
  frame.props[1].mark = "outer";
  frame.props[1].side = PropSide::outside;
  return frame;
}

}  // namespace deadshore::solver
