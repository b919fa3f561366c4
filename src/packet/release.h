// Writing packets into out/ (packet/record.h says what lies where).
//
// All files are written and synced in the program's own place, then the folder takes its
// name in one system call. A failure, or a killed run, leaves all that lay there as it was:
// a release is complete or not there.
//
// Each throws std::invalid_argument as manifest(), and std::runtime_error with the path and
// the system's reason when something cannot be written.
#pragma once

#include <filesystem>
#include <string>

#include "packet/packet.h"
#include "packet/record.h"

namespace bedwright {

// out/<order>/<revision>/, if nothing lies there. False, and nothing done, when something does.
bool write_release(const std::filesystem::path& out, const Packet& packet);

// In the place of `earlier`, which stays beside it, withdrawn. Throws std::runtime_error when
// another has taken its place meanwhile. Returns the folder it now lies in.
struct Withdrawal {
  std::string why, date;
};
std::filesystem::path replace_release(const std::filesystem::path& out, const Packet& packet,
                                      const Recorded& earlier, const Withdrawal& withdrawal);

// out/<order>/trial/, in the place of any earlier trial. Throws std::runtime_error when what
// lies there is not ours to replace: no folder, without a manifest of this program (an
// empty folder will do), or holding files its manifest does not list.
void write_trial(const std::filesystem::path& out, const Packet& packet);

}  // namespace bedwright
