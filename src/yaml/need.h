// Whether a key described with yaml/describe.h may be left out.
#pragma once

#include "yaml/describe.h"

namespace bedwright {

struct Need {
  bool required = true;
  Need() = default;
  Need(OptionalKey) : required(false) {}  // NOLINT: v.optional stands where a Need is wanted
};

}  // namespace bedwright
