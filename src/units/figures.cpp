// How a figure is printed: by the order's units, for reading, for the tape, for a --set.
#include "units/figures.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "units/print.h"
#include "units/tape.h"

namespace bedwright {
namespace {

constexpr Mm finest = inch / 64;

std::string without_unit(std::string s) {
  s.erase(s.rfind(' '));
  return s;
}

std::string with_mm(Mm length) { return mm_figure(length) + " mm"; }

// To the nearest 1/64 in, saying so where that is not the figure itself.
std::string nearest_inches(Mm length) {
  if (std::abs(length) < finest / 2) return decimal_inch(length);
  const bool plain = std::abs(length - on_tape(length, finest)) <= 0.005 * inch;
  const std::string text = std::abs(length) < 6 * foot ? tape(length, 64) : feet_tape(length, 64);
  return (plain ? "" : "about ") + text;
}

// No minus before a nought.
double round_to(double value, double step) { return std::round(value / step) * step + 0.0; }

// A whole figure with its thousands apart: "29,000,000".
std::string thousands(double value) {
  std::string text = fmt::format("{:.0f}", value);
  for (std::ptrdiff_t at = std::ssize(text) - 3; at > 0; at -= 3)
    text.insert(static_cast<std::size_t>(at), ",");
  return text;
}

}  // namespace

std::string printing_word(Printing printing) { return printing == Printing::inches ? "inch" : "metric"; }

Printing printing_called(const std::string& word) {
  for (const Printing p : {Printing::inches, Printing::metric})
    if (word == printing_word(p)) return p;
  throw std::invalid_argument(fmt::format("printing is inch or metric, not \"{}\"", word));
}

std::string mm_figure(Mm length) {
  std::string s = without_unit(millimetres(length, 1));
  if (s.ends_with(".0")) s.erase(s.size() - 2);
  return s;
}

std::string inch_figure(Mm length) { return without_unit(decimal_inch(length)); }

std::string Figures::say(Mm length) const {
  const std::string mm = millimetres(length, 1);
  if (std::abs(length) < same_place) return fmt::format("0 {}", unit());
  return in_inches() ? fmt::format("{} ({})", nearest_inches(length), mm) : mm;
}

std::string Figures::brief(Mm length) const {
  const bool on_mark = std::abs(length - on_tape(length, finest)) < same_place / 2;
  return in_inches() && on_mark ? tape(length, 64) : say(length);
}

std::string Figures::customer(Mm length) const {
  if (!in_inches()) return with_mm(length);
  const auto on = [&](Mm at) { return std::abs(std::round(length / at) * at - length) < 0.005; };
  if (on(mark)) return tape_length(length);
  if (length < foot && on(finest)) return size_length(length);
  return fmt::format("{} ({} in)", tape_length(length), inch_figure(length));
}

std::string Figures::place(Mm x) const {
  return in_inches() ? tape(x, 16) : fmt::format("{:.0f} mm", round_to(x, 1));
}

std::string Figures::small(Mm length) const {
  return both(fmt::format("{:.3f} in", round_to(length / inch, 0.001)),
              fmt::format("{:.2f} mm", round_to(length, 0.01)));
}

std::string Figures::kerf(Mm width) const {
  return in_inches() ? fmt::format("{:.4f} in", width / inch) : fmt::format("{:.2f} mm", width);
}

std::string Figures::set(Mm length) const {
  // A 1/32 rounded to the last place `set` writes is off by just half of it: a hair more.
  if (in_inches() && std::abs(length - on_tape(length, finest)) < same_place / 2 + 1e-9)
    return tape(length, 64);
  return plain_figure(length) + " mm";
}

// A tenth of a thousandth is the last place `set` writes.
std::string Figures::set_at_most(Mm length) const { return set(std::floor(length * 1e4 + 1e-6) / 1e4); }
std::string Figures::set_at_least(Mm length) const { return set(std::ceil(length * 1e4 - 1e-6) / 1e4); }

std::string Figures::set_decimal(Mm length) const {
  return in_inches() ? fmt::format("{:g} in", std::round(length / inch * 1e4) / 1e4)
                     : fmt::format("{:g} mm", std::round(length * 1000) / 1000);
}

std::string Figures::tape_figure(Mm length) const {
  if (!in_inches()) return mm_figure(length);
  const int denominator = std::max(1, static_cast<int>(std::lround(inch / mark)));
  return without_unit(tape(on_tape(length, mark), denominator));
}

std::string Figures::size_figure(Mm size) const {
  return in_inches() ? without_unit(tape(size, 64)) : mm_figure(size);
}

std::string Figures::tape_length(Mm length) const { return tape_figure(length) + " " + unit(); }
std::string Figures::size_length(Mm size) const { return size_figure(size) + " " + unit(); }

std::string Figures::tape_label(Mm length) const {
  return in_inches() ? fmt::format("{} ({})", tape_figure(length), with_mm(length)) : mm_figure(length);
}

std::string Figures::size_label(Mm size) const {
  return in_inches() ? fmt::format("{} ({})", size_figure(size), with_mm(size)) : mm_figure(size);
}

std::string Figures::size_note(Mm size) const {
  return in_inches() ? fmt::format("{} ({})", size_length(size), with_mm(size)) : with_mm(size);
}

std::string Figures::rule_reading(Mm size) const {
  return in_inches() ? fmt::format("{} / {}", size_length(size), with_mm(size)) : with_mm(size);
}

std::string Figures::running(Mm length) const {
  return in_inches()
             ? fmt::format("{}  ({} in, {})", tape_figure(length), inch_figure(length), with_mm(length))
             : mm_figure(length);
}

std::string Figures::running_words(Mm length) const {
  return in_inches() ? running(length) : with_mm(length);
}

std::string Figures::tape_to_make(Mm length) const {
  return in_inches()
             ? fmt::format("{} ({} in, {})", tape_length(length), inch_figure(length), with_mm(length))
             : with_mm(length);
}

std::string Figures::size_to_make(Mm size) const {
  return in_inches() ? fmt::format("{} ({} in, {})", size_length(size), inch_figure(size), with_mm(size))
                     : with_mm(size);
}

std::string Figures::error_figure(Mm error) const {
  return in_inches() ? inch_figure(error) : fmt::format("{:.1f}", error);
}

std::vector<std::string> Figures::narrow_heads(const std::string& what) const {
  return in_inches() ? std::vector<std::string>{what, "in"} : std::vector<std::string>{what + " mm"};
}

std::vector<std::string> Figures::narrow_cells(Mm length) const {
  return in_inches() ? std::vector{tape_figure(length), inch_figure(length)} : std::vector{mm_figure(length)};
}

std::vector<std::string> Figures::heads(const std::string& what) const {
  std::vector<std::string> all = narrow_heads(what);
  if (in_inches()) all.emplace_back("mm");
  return all;
}

std::vector<std::string> Figures::cells(Mm length) const {
  std::vector<std::string> all = narrow_cells(length);
  if (in_inches()) all.push_back(mm_figure(length));
  return all;
}

std::vector<std::string> Figures::size_heads(const std::string& what) const {
  return in_inches() ? std::vector<std::string>{what + " in", "mm"} : std::vector<std::string>{what + " mm"};
}

std::vector<std::string> Figures::size_cells(Mm size) const {
  return in_inches() ? std::vector{size_figure(size), mm_figure(size)} : std::vector{mm_figure(size)};
}

std::string Figures::without_own_unit(std::string text) const {
  const std::string own = fmt::format(" {}", unit());
  if (text.ends_with(own)) text.erase(text.size() - own.size());
  return text;
}

std::string Figures::both(const std::string& inches, const std::string& metric) const {
  if (!in_inches()) return metric;
  return alone ? inches : fmt::format("{} ({})", inches, metric);
}

std::string Figures::mass(Kg m) const {
  return both(fmt::format("{:.0f} lb", round_to(m / pound, 1)), fmt::format("{:.0f} kg", round_to(m, 1)));
}

std::string Figures::force(Newton f) const {
  return both(fmt::format("{:.0f} lbf", round_to(f / pound_force, 1)),
              fmt::format("{:.2f} kN", round_to(f / 1000, 0.01)));
}

std::string Figures::stress(Mpa s) const {
  return both(fmt::format("{:.1f} ksi", round_to(s / ksi, 0.1)), fmt::format("{:.0f} MPa", round_to(s, 1)));
}

std::string Figures::ground(Mpa p) const {
  return both(fmt::format("{:.0f} lb/ft2", round_to(p * foot * foot / pound_force, 100)),
              fmt::format("{:.0f} kPa", round_to(p * 1000, 1)));
}

std::string Figures::moment(double n_mm) const {
  return both(fmt::format("{:.1f} kip-in", round_to(n_mm / (1000 * pound_force * inch), 0.1)),
              fmt::format("{:.2f} kN m", round_to(n_mm / 1e6, 0.01)));
}

std::string Figures::along_weld(double n_per_mm) const {
  return both(fmt::format("{:.2f} kip/in", round_to(n_per_mm / (1000 * pound_force / inch), 0.01)),
              fmt::format("{:.0f} N/mm", round_to(n_per_mm, 1)));
}

std::string Figures::turning(double n_mm) const {
  return both(fmt::format("{:.0f} lbf-ft", round_to(n_mm / (pound_force * foot), 1)),
              fmt::format("{:.0f} N m", round_to(n_mm / 1000, 1)));
}

std::string Figures::fine_mass(Kg m) const {
  const PrintedUnit u = printed("kg");
  return fmt::format("{:.1f} {}", m / u.one, u.name);
}

std::string Figures::rating(Kg m) const {
  const PrintedUnit u = printed("kg");
  return fmt::format("{:.0f} {}", std::ceil(m / u.one - 1e-9), u.name);
}

std::string Figures::section_modulus(Mm3 s) const {
  return fmt::format("{:.2f} {}", s / std::pow(either(inch, 10), 3), in_inches() ? "in3" : "cm3");
}

std::string Figures::inertia(Mm4 i) const {
  return fmt::format("{:.1f} {}", i / std::pow(either(inch, 10), 4), in_inches() ? "in4" : "cm4");
}

std::string Figures::elasticity(Mpa e) const {
  return in_inches() ? thousands(e / ksi * 1000) + " psi" : thousands(e) + " MPa";
}

std::string Figures::mass_figure(Kg m) const {
  return fmt::format("{:.0f}", round_to(m / printed("kg").one, 1));
}

std::string Figures::mass_cell(Kg m) const {
  return both(mass_figure(m), in_inches() ? fmt::format("{:.0f} kg", round_to(m, 1)) : mass_figure(m));
}

PrintedUnit Figures::line_load_unit() const {
  return in_inches() ? PrintedUnit{pound_force / inch, "lb/in"} : PrintedUnit{1, "N/mm"};
}

PrintedUnit Figures::moment_scale() const {
  return in_inches() ? PrintedUnit{pound_force * foot, "lbf-ft"} : PrintedUnit{1000, "N m"};
}

PrintedUnit Figures::printed(const std::string& unit) const {
  if (in_inches() && unit == "mm") return {inch, "in"};
  if (in_inches() && unit == "kg") return {pound, "lb"};
  if (in_inches() && unit == "MPa") return {ksi, "ksi"};
  return {1, unit};
}

Mm Figures::round_up(Mm length) const { return std::ceil(length / step() - 1e-6) * step(); }
Mm Figures::whole_down(Mm place) const { return std::floor(place / place_step() + 1e-6) * place_step(); }

std::vector<Mm> Figures::usual_tubes() const {
  return in_inches() ? std::vector<Mm>{2 * inch, 1.5 * inch, inch} : std::vector<Mm>{50, 40, 30, 25};
}

std::vector<Mm> Figures::usual_plates() const {
  if (!in_inches()) return {6, 8, 10, 12, 15, 20, 25};
  std::vector<Mm> plates{0.25, 0.3125, 0.375, 0.5, 0.625, 0.75, 1};
  for (Mm& thickness : plates) thickness *= inch;
  return plates;
}

Figures figures_of_standard(bool metric) { return {metric ? Printing::metric : Printing::inches}; }

}  // namespace bedwright
