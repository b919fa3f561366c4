// Where the program's own params/ and templates/ are.
#pragma once

#include <filesystem>
#include <stdexcept>
#include <string>

namespace bedwright {

// There is no such folder; the text is one sentence for the user.
struct NoHome : std::runtime_error {
  using runtime_error::runtime_error;
};

struct Home {
  std::filesystem::path folder;  // holds params/ and templates/

  // A source tree, rather than the share folder of an installed program. Its out/ takes
  // what is written where no --out is given; an installed program writes below the
  // current folder, because its own is not the user's.
  bool is_source_tree() const;
  std::filesystem::path out() const;
  // How a user calls the program.
  const char* command() const { return is_source_tree() ? "./bedwright" : "bedwright"; }
};

// The folder `told` (BEDWRIGHT_HOME; empty: not told), else share/bedwright beside the
// folder of the program at `executable`, else `built_from`. A folder that is told and
// is none is no reason to take another.
Home find_home(const std::string& told, const std::filesystem::path& executable,
               const std::filesystem::path& built_from);

// This program's.
Home home();

}  // namespace bedwright
