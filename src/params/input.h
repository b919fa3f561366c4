// Opening the files an order is made of.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "yaml/problem.h"

namespace bedwright {

// The bytes of an ordinary file of bounded size. Otherwise nothing, and a problem at `where`.
std::optional<std::string> read_bytes(const std::string& path, const Mark& where,
                                      std::vector<Problem>& problems);

// A path written in the order file, from the order file's folder.
std::string beside(const std::string& order_path, const std::string& written);

// Whether two paths lead to the same file, however they are written.
bool same_file(const std::string& a, const std::string& b);

}  // namespace bedwright
