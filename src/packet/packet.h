// A packet: what is written of one order at one time, and the manifest that says so.
#pragma once

#include <string>
#include <vector>

#include "packet/state.h"
#include "params/job.h"

namespace bedwright {

struct PacketFile {
  std::string path;  // relative, with '/'
  std::string content;
};

// Whose bed it is, in the manifest, so that a list of all that was made reads no more.
struct OrderName {
  std::string number, revision, customer, date, kit, frame;
};
OrderName order_name(const Job& job);

struct Packet {
  OrderName order;
  std::string version;            // of the program
  std::string build;              // its build name, for the manifest alone
  std::string input_digest;       // SHA-256 over the inputs
  std::vector<std::string> sets;  // overrides as given
  PacketState state = PacketState::stopped;
  std::vector<PacketFile> files;  // manifest.json is made, not given
};

inline constexpr const char* manifest_name = "manifest.json";
inline constexpr const char* program_name = "bedwright";
// Raised when a later program's manifest says something this one would misread.
inline constexpr const char* packet_format = "bedwright-packet-2";

// manifest.json: format, program, version, build, order, input digest, sets, state and, sorted
// by path, each file's size and SHA-256. Throws std::invalid_argument for a path
// that is absolute, climbs out, is given twice, or is manifest.json itself.
std::string manifest(const Packet& packet);

}  // namespace bedwright
