// Masses, forces, stresses and moments as texts in the order's units.
#include "loads/say.h"

#include <fmt/format.h>

#include <cmath>

#include "units/print.h"

namespace bedwright {
namespace {

std::string joined(const SayLoads& say, const std::string& inches, const std::string& metric) {
  if (say.printing == Printing::metric) return metric;
  return say.both ? fmt::format("{} ({})", inches, metric) : inches;
}

// No minus before a nought.
double round_to(double value, double step) { return std::round(value / step) * step + 0.0; }

}  // namespace

std::string name(const TravelCase& travel, bool brief) {
  std::string text = travel.head == HeadAt::off ? "head off" : brief ? "head" : "head locked";
  if (travel.head != HeadAt::off) text += travel.head == HeadAt::front ? " front" : " rear";
  return travel.cargo ? text + ", cargo" : text;
}

std::string SayLoads::mass(Kg m) const {
  return joined(*this, fmt::format("{:.0f} lb", round_to(m / pound, 1)),
                fmt::format("{:.0f} kg", round_to(m, 1)));
}

std::string SayLoads::bare_mass(Kg m) const {
  return fmt::format("{:.0f}", round_to(printing == Printing::inches ? m / pound : m, 1));
}

std::string SayLoads::force(Newton f) const {
  return joined(*this, fmt::format("{:.0f} lbf", round_to(f / pound_force, 1)),
                fmt::format("{:.2f} kN", round_to(f / 1000, 0.01)));
}

std::string SayLoads::stress(Mpa s) const {
  return joined(*this, fmt::format("{:.1f} ksi", round_to(s / ksi, 0.1)),
                fmt::format("{:.0f} MPa", round_to(s, 1)));
}

std::string SayLoads::moment(double n_mm) const {
  return joined(*this, fmt::format("{:.1f} kip-in", round_to(n_mm / (1000 * pound_force * inch), 0.1)),
                fmt::format("{:.2f} kN m", round_to(n_mm / 1e6, 0.01)));
}

std::string SayLoads::along_weld(double n_per_mm) const {
  return joined(*this, fmt::format("{:.2f} kip/in", round_to(n_per_mm / (1000 * pound_force / inch), 0.01)),
                fmt::format("{:.0f} N/mm", round_to(n_per_mm, 1)));
}

std::string SayLoads::turning(double n_mm) const {
  return joined(*this, fmt::format("{:.0f} lbf-ft", round_to(n_mm / (pound_force * foot), 1)),
                fmt::format("{:.0f} N m", round_to(n_mm / 1000, 1)));
}

std::string SayLoads::small(Mm length) const {
  return joined(*this, fmt::format("{:.3f} in", round_to(length / inch, 0.001)),
                fmt::format("{:.2f} mm", round_to(length, 0.01)));
}

std::string SayLoads::place(Mm x) const {
  if (printing == Printing::metric) return fmt::format("{:.0f} mm", round_to(x, 1));
  return tape(x, 16);
}

}  // namespace bedwright
