// Writing a file that must not be there yet.
#pragma once

#include <filesystem>
#include <string>

namespace bedwright {

// Empty when a file of that name could be made; else one sentence why not: it is
// there already, its folder is missing, or its name cannot name a file.
std::string no_new_file_there(const std::filesystem::path& file);

// Empty when it is written whole; else one sentence why not, and nothing is left
// behind. A file that is there is never written over, not even by two at once.
std::string write_new_file(const std::filesystem::path& file, const std::string& text);

}  // namespace bedwright
