// Decimal figures as text.
#pragma once

#include <optional>
#include <string_view>

namespace bedwright {

// The double nearest to a plain decimal ("-12.5", ".5", "3e-4"), which must be the
// whole text. None where it is anything else, or where no double comes near it.
std::optional<double> decimal(std::string_view text);

}  // namespace bedwright
