// What was probably meant by a quantity that reads as none.
#pragma once

#include <string>
#include <string_view>

namespace bedwright {

// The text in plain signs: inch and foot marks as a keyboard has them for those a word processor
// makes of them, 77-1/2 for 77½, an ordinary space for a no-break one, a point for a decimal
// comma ("77,5"; three figures behind a comma may be thousands and are left), no point behind a
// unit, and the ways to say feet, inches and a fraction that drawings have ("6-5-1/2",
// "6' 5 1/2"). The same text where there is nothing of that in it; no promise that it reads.
std::string in_plain_signs(std::string_view text);

}  // namespace bedwright
