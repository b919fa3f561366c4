// QR codes (ISO/IEC 18004), by libqrencode.
#pragma once

#include <string>

#include "draw/list2d.h"

namespace bedwright {

// Clear space that a reader needs on each side of a code, in modules (ISO/IEC 18004, 9.1 of
// the edition of 2015).
inline constexpr int qr_quiet_zone = 4;

// The text as a code of error correction M, which bears the loss of 15 % of it: a square of
// `side` without its quiet zone, its lower left corner at (0, 0). The more text, the smaller
// its modules. Throws std::invalid_argument for an empty text or one no code holds.
struct QrCode {
  Filled dark;
  Mm module = 0;
};
QrCode qr_code(const std::string& text, Mm side);

}  // namespace bedwright
