// Figures as a finding's sentences print them, and as a --set takes them.
#pragma once

#include <string>

#include "catalog/fastener.h"
#include "params/order.h"

namespace bedwright {

struct Figures {
  Printing printing = Printing::inches;
  Mm mark = inch / 16;  // smallest mark of the layout tape

  // For reading: "3/16 in (4.8 mm)", "6 ft 5-1/2 in (1968.5 mm)", "4.8 mm". The
  // fraction is the nearest 1/64 in, with "about" before it when it is more than
  // 0.005 in off; below 1/128 in it is a decimal. Millimetres are to 0.1 mm.
  std::string say(Mm length) const;
  // For writing into an order, within 1e-4 mm: "1-1/4 in", "35 mm"; millimetres
  // where inches come out on no 1/64.
  std::string set(Mm length) const;
  // The same of a most or a least, rounded to the side that keeps it.
  std::string set_at_most(Mm length) const;
  std::string set_at_least(Mm length) const;
  // A load on a weld, and a mass: "1388 N/mm" or "7926 lb/in"; "680 kg" or "1500 lb".
  double line_load(double newton_per_mm) const;
  const char* line_load_unit() const { return printing == Printing::inches ? "lb/in" : "N/mm"; }
  std::string say_mass(Kg mass) const;
  // The step a remedy is rounded to: 1/16 in, or 0.5 mm.
  Mm step() const { return printing == Printing::inches ? inch / 16 : 0.5; }
  // Up to the next step, with a hair's allowance for rounding.
  Mm round_up(Mm length) const;
};

// A bolt length in its own standard's unit: "1-1/2 in", "35 mm".
std::string bolt_length_text(const BoltSize& size, Mm length);

}  // namespace bedwright
