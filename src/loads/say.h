// Loads as the report, the findings and the loads page print them.
#pragma once

#include <string>

#include "params/order.h"

namespace bedwright {

// How it travels: "head locked front, cargo"; where a column has little room, "head
// front, cargo".
std::string name(const TravelCase& travel, bool brief = false);

struct SayLoads {
  Printing printing = Printing::inches;
  bool both = true;  // inch orders: the metric figure in brackets beside it

  std::string mass(Kg m) const;                   // "2082 lb (944 kg)", "944 kg"
  std::string bare_mass(Kg m) const;              // "2082", in the order's one unit
  std::string force(Newton f) const;              // "553 lbf (2.46 kN)", "2.46 kN"
  std::string stress(Mpa s) const;                // "9.2 ksi (63 MPa)", "63 MPa"
  std::string moment(double n_mm) const;          // "20.7 kip-in (2.34 kN m)", "2.34 kN m"
  std::string along_weld(double n_per_mm) const;  // "1.24 kip/in (217 N/mm)", "217 N/mm"
  std::string turning(double n_mm) const;         // moments on the pictures: "1723 lbf-ft", "2340 N m"
  std::string small(Mm length) const;             // "0.024 in (0.62 mm)", "0.62 mm"
  std::string place(Mm x) const;                  // along the bed: "103 in", "2560 mm"
};

}  // namespace bedwright
