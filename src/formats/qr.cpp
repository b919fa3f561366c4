// Asks the library for the modules and joins dark neighbours into rectangles.
#include "formats/qr.h"

#include <fmt/format.h>
#include <qrencode.h>

#include <cerrno>
#include <memory>
#include <new>
#include <stdexcept>
#include <system_error>

namespace bedwright {

QrCode qr_code(const std::string& text, Mm side) {
  if (text.empty()) throw std::invalid_argument("a QR code of no text");
  const std::unique_ptr<QRcode, decltype(&QRcode_free)> code(
      QRcode_encodeData(static_cast<int>(text.size()), reinterpret_cast<const unsigned char*>(text.data()), 0,
                        QR_ECLEVEL_M),
      QRcode_free);
  if (!code) {
    const int error = errno;
    if (error == ENOMEM) throw std::bad_alloc();
    if (error == ERANGE)
      throw std::invalid_argument(fmt::format("{} bytes are more than a QR code holds", text.size()));
    throw std::system_error(error, std::generic_category(), "a QR code cannot be made");
  }
  QrCode out;
  const int count = code->width;
  out.module = side / count;
  // The library's rows run downward; the lowest bit of a module says that it is dark.
  const auto dark = [&](int row, int column) { return (code->data[row * count + column] & 1U) != 0; };
  for (int row = 0; row < count; ++row)
    for (int from = 0; from < count; ++from) {
      if (!dark(row, from)) continue;
      int to = from;
      while (to < count && dark(row, to)) ++to;
      const double high = count - row;
      out.dark.boxes.push_back({out.module * Vec2{static_cast<double>(from), high - 1},
                                out.module * Vec2{static_cast<double>(to), high}});
      from = to;
    }
  return out;
}

}  // namespace bedwright
