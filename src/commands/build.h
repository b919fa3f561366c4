// Which build of the program this is.
#pragma once

#include <string>

namespace bedwright {

// "0.2.0".
std::string version();

// The commit it was built from, with -dirty where the sources were changed since; where
// they came without their history, the version.
std::string build_name();

}  // namespace bedwright
