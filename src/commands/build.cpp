// Version and build name, from the header src/build_name.cmake writes.
#include "commands/build.h"

#include "build_name.h"

namespace bedwright {

std::string version() { return BEDWRIGHT_VERSION; }

std::string build_name() { return BEDWRIGHT_BUILD; }

}  // namespace bedwright
