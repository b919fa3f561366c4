// Lengths and masses as texts in the order's units.
#include "rules/figures.h"

#include <fmt/format.h>

#include <cmath>

#include "units/print.h"
#include "units/tape.h"

namespace bedwright {
namespace {

constexpr Mm finest = inch / 64;

std::string inches(Mm length) {
  if (std::abs(length) < finest / 2) return decimal_inch(length);
  const bool plain = std::abs(length - on_tape(length, finest)) <= 0.005 * inch;
  const std::string text = std::abs(length) < 6 * foot ? tape(length, 64) : feet_tape(length, 64);
  return (plain ? "" : "about ") + text;
}

}  // namespace

std::string Figures::say(Mm length) const {
  const std::string mm = millimetres(length, 1);
  if (std::abs(length) < same_place) return printing == Printing::metric ? "0 mm" : "0 in";
  return printing == Printing::metric ? mm : fmt::format("{} ({})", inches(length), mm);
}

std::string Figures::set(Mm length) const {
  // A 1/32 rounded to the last place `set` writes is off by just half of it: a hair more.
  if (printing == Printing::inches && std::abs(length - on_tape(length, finest)) < same_place / 2 + 1e-9)
    return tape(length, 64);
  return plain_figure(length) + " mm";
}

// A tenth of a thousandth is the last place `set` writes.
std::string Figures::set_at_most(Mm length) const { return set(std::floor(length * 1e4 + 1e-6) / 1e4); }
std::string Figures::set_at_least(Mm length) const { return set(std::ceil(length * 1e4 - 1e-6) / 1e4); }

double Figures::line_load(double newton_per_mm) const {
  return printing == Printing::inches ? newton_per_mm * inch / pound_force : newton_per_mm;
}

std::string Figures::say_mass(Kg mass) const {
  return printing == Printing::inches ? fmt::format("{:.0f} lb", mass / pound)
                                      : fmt::format("{:.0f} kg", mass);
}

Mm Figures::round_up(Mm length) const { return std::ceil(length / step() - 1e-6) * step(); }

std::string bolt_length_text(const BoltSize& size, Mm length) {
  return Figures{size.metric ? Printing::metric : Printing::inches, inch / 16}.set(length);
}

}  // namespace bedwright
