// SHA-256 (FIPS 180-4), by OpenSSL's libcrypto.
#pragma once

#include <string>
#include <string_view>

namespace bedwright {

// 64 hexadecimal digits, small letters. Throws std::runtime_error when the
// library refuses (out of memory, algorithm switched off).
std::string sha256(std::string_view bytes);

}  // namespace bedwright
