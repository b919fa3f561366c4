// Says whether the bed of a released packet can be built: one line a fault, exit 1 when
// there is any, 2 when it was not asked rightly.
#include <fmt/format.h>

#include "packet.h"

int main(int count, char** arguments) {
  if (count != 2) {
    fmt::print(stderr, "inspector PACKET: the folder of a release\n");
    return 2;
  }
  const std::vector<std::string> faults = inspector::inspect(arguments[1]);
  for (const std::string& line : faults) fmt::print("{}\n", line);
  return faults.empty() ? 0 : 1;
}
