// What a way of travelling is called.
#include "loads/travel_name.h"

namespace bedwright {

std::string name(const TravelCase& travel, bool brief) {
  if (travel.bare) return "bare frame";
  std::string text = travel.head == HeadAt::off ? "head off" : brief ? "head" : "head locked";
  if (travel.head != HeadAt::off) text += travel.head == HeadAt::front ? " front" : " rear";
  return travel.cargo ? text + ", cargo" : text;
}

}  // namespace bedwright
