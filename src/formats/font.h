// The one font that letters are set in.
//
// It is asked for by its name, osifont, and no other is taken for it: what is written
// must not depend on which fonts a machine happens to have.
#pragma once

#include <optional>
#include <string>

namespace bedwright {

// Nothing where it is not installed.
std::optional<std::string> font_file();

// Empty where the font is installed and can be read; else one sentence what to do.
std::string font_fault();

}  // namespace bedwright
