// Asks the list of installed fonts for the one there is to be.
#include "formats/font.h"

#include <fmt/format.h>
#include <fontconfig/fontconfig.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <memory>
#include <stdexcept>
#include <vector>

namespace bedwright {
namespace {

const char* const family = "osifont";

// A list, not a match: a match always answers, with the nearest font it has.
std::optional<std::string> listed_file() {
  const std::unique_ptr<FcPattern, decltype(&FcPatternDestroy)> wanted(
      FcPatternBuild(nullptr, FC_FAMILY, FcTypeString, family, nullptr), FcPatternDestroy);
  const std::unique_ptr<FcObjectSet, decltype(&FcObjectSetDestroy)> asked(FcObjectSetBuild(FC_FILE, nullptr),
                                                                          FcObjectSetDestroy);
  if (!wanted || !asked) throw std::runtime_error("the list of fonts cannot be asked for");
  const std::unique_ptr<FcFontSet, decltype(&FcFontSetDestroy)> found(
      FcFontList(nullptr, wanted.get(), asked.get()), FcFontSetDestroy);
  if (!found) throw std::runtime_error("the list of fonts does not load");
  std::vector<std::string> files;
  for (int i = 0; i < found->nfont; ++i) {
    FcChar8* file = nullptr;
    if (FcPatternGetString(found->fonts[i], FC_FILE, 0, &file) == FcResultMatch)
      files.emplace_back(reinterpret_cast<const char*>(file));
  }
  if (files.empty()) return std::nullopt;
  // Of several the last by path: the distribution's, in /usr/share, before one of
  // /usr/local or of somebody's home folder.
  return *std::max_element(files.begin(), files.end());
}

}  // namespace

std::optional<std::string> font_file() {
  static const std::optional<std::string> file = listed_file();
  return file;
}

std::string font_fault() {
  const auto file = font_file();
  if (!file)
    return fmt::format(
        "the font {} is not installed and no other is taken for it, so nothing was written; install "
        "Debian's package fonts-osifont",
        family);
  if (::access(file->c_str(), R_OK) != 0)
    return fmt::format("the font {} cannot be read: {}; nothing was written", *file, std::strerror(errno));
  return {};
}

}  // namespace bedwright
