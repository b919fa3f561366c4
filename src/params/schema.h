// The JSON Schemas of the files people write, for editors and outside readers.
// They say what the loader says of single keys; what holds between keys (see
// params/cross_check.h) no schema states.
#pragma once

#include <string>

namespace bedwright {

std::string order_schema();
std::string kit_schema();
std::string frame_schema();
std::string built_schema();

}  // namespace bedwright
