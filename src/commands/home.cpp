// Looks for the program's own folders: told, installed, or built from.
#include "commands/home.h"

#include <fmt/format.h>

#include <cstdlib>

namespace bedwright {
namespace {

namespace fs = std::filesystem;

bool holds_our_folders(const fs::path& folder) {
  std::error_code none;  // what cannot be looked at is not there for us
  return fs::is_directory(folder / "params", none) && fs::is_directory(folder / "templates", none);
}

}  // namespace

bool Home::is_source_tree() const {
  std::error_code none;
  return fs::exists(folder / "src" / "CMakeLists.txt", none);
}

fs::path Home::out() const { return is_source_tree() ? folder / "out" : fs::path("out"); }

Home find_home(const std::string& told, const fs::path& executable, const fs::path& built_from) {
  if (!told.empty()) {
    if (holds_our_folders(told)) return {told};
    throw NoHome(
        fmt::format("BEDWRIGHT_HOME is {}, which does not hold params/ and templates/; name the "
                    "folder that does, or unset it",
                    told));
  }
  const fs::path beside = executable.parent_path().parent_path() / "share" / "bedwright";
  for (const fs::path& folder : {beside, built_from})
    if (holds_our_folders(folder)) return {folder};
  throw NoHome(
      fmt::format("there is no {} with params/ and templates/ in it; install the program again, or "
                  "name its folder in BEDWRIGHT_HOME",
                  beside.string()));
}

Home home() {
  const char* told = std::getenv("BEDWRIGHT_HOME");
  std::error_code none;  // without /proc the other two places are left
  return find_home(told ? told : "", fs::read_symlink("/proc/self/exe", none), BEDWRIGHT_SOURCE_HOME);
}

}  // namespace bedwright
