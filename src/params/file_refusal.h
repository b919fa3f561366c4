// Why a file an order is made of cannot be had, in the words the user reads.
#pragma once

#include <string>
#include <vector>

#include "yaml/problem.h"

namespace bedwright {

class FileRefusal {
 public:
  // Problems stand at `where`, which may be the file itself; all four outlive this.
  FileRefusal(const std::string& path, const Mark& where, std::vector<Problem>& problems);

  void no_name() const;
  void missing() const;
  void folder() const;
  void other(const std::string& what, const std::string& would_do) const;

 private:
  const std::string& path_;
  const Mark& where_;
  std::vector<Problem>& problems_;
  bool named_elsewhere_;  // else the place is the file itself and says its name
};

}  // namespace bedwright
