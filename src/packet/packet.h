// The packet: every file of one order in one folder, replaced as a whole or not
// touched.
//
// All files are written and synced in a hidden sibling of the folder, then the
// two change places in one system call. A failure, or a killed run, leaves the
// folder as it was; what a killed run left beside it is removed by the next. A
// lock beside the folder keeps two runs from writing at once.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "packet/state.h"

namespace bedwright {

struct PacketFile {
  std::string path;  // relative, with '/'
  std::string content;
};

struct Packet {
  std::string version;            // of the program
  std::string build;              // its build name, for the manifest alone
  std::string input_digest;       // SHA-256 over the inputs
  std::vector<std::string> sets;  // overrides as given
  PacketState state = PacketState::stopped;
  std::vector<PacketFile> files;  // manifest.json is made, not given
};

// manifest.json: format, program, version, build, input digest, sets, state and, sorted
// by path, each file's size and SHA-256. Throws std::invalid_argument for a path
// that is absolute, climbs out, is given twice, or is manifest.json itself.
std::string manifest(const Packet& packet);

// Writes the packet to `folder`. Throws std::invalid_argument as manifest(), and
// std::runtime_error with the path and the system's reason when something cannot
// be written, when another run holds the lock for ten seconds, or when `folder`
// exists and is not ours to replace: no folder, without a manifest of this
// program (an empty folder will do), or holding files the manifest does not list.
void write_packet(const std::filesystem::path& folder, const Packet& packet);

}  // namespace bedwright
