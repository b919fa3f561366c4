// What lies in out/, as its manifests say.
//
//   out/<order>/<revision>/              a release: never changed
//   out/<order>/<revision>.withdrawn-1/  one that was replaced, and beside it, in
//   out/<order>/<revision>.withdrawn-1.json, when and why (no revision has a point in it)
//   out/<order>/extra/<revision>/        made of a release on request: replaced at any time
//   out/<order>/trial/                   what is no release: replaced at any time
//   out/.bedwright/                      the program's own (packet/workplace.h)
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "packet/packet.h"

namespace bedwright {

struct ListedFile {
  std::string path, sha256;
};

enum class Standing {
  released,
  withdrawn,
  trial,
  damaged,  // a folder where a release should be, whose manifest cannot be read, or is not known
};
const char* word(Standing standing);

struct Recorded {
  std::filesystem::path folder;
  Standing standing = Standing::damaged;
  std::string manifest;  // its text; empty where damaged
  OrderName order;
  std::string format, version, build, input_digest, state;
  std::vector<ListedFile> files;
  std::string withdrawn_on, why;  // of one withdrawn
};

// Why a damaged one cannot be read: in what manner its manifest.json fails.
std::string damage(const Recorded& record);

// Whether the program that released it is a later one than `version`; both as "0.2.0".
bool is_of_later_program(const Recorded& record, const std::string& version);

// Whether the packet, written there, would be what is there: its manifest is the same but
// for the build's name. Two builds of one version that make the same files are one.
bool would_be_the_same(const Recorded& record, const Packet& packet);

std::filesystem::path release_folder(const std::filesystem::path& out, const std::string& number,
                                     const std::string& revision);
std::filesystem::path extra_folder(const std::filesystem::path& release);
std::filesystem::path trial_folder(const std::filesystem::path& out, const std::string& number);
std::filesystem::path withdrawn_folder(const std::filesystem::path& out, const std::string& number,
                                       const std::string& revision, int n);
// The note beside a folder of one withdrawn.
std::filesystem::path withdrawal_note(const std::filesystem::path& withdrawn);

// The packet a folder holds, standing as the folder's name says; nothing when there is
// no manifest.json in it.
std::optional<Recorded> recorded(const std::filesystem::path& folder);

// All that lies in an order's folder, in order of name; and in every order's. Nothing where
// there is no such folder. Throws std::filesystem::filesystem_error when one cannot be read.
std::vector<Recorded> recorded_of_order(const std::filesystem::path& order_folder);
std::vector<Recorded> all_recorded(const std::filesystem::path& out);

// What became of a recorded packet's files since they were written.
struct Differences {
  std::vector<std::string> missing, changed, extra;
  bool none() const { return missing.empty() && changed.empty() && extra.empty(); }
};
Differences differences_on_disk(const Recorded& record);

// Between its files and those another packet would hold.
Differences differences(const Recorded& record, const std::vector<PacketFile>& files);
Differences differences(const std::vector<PacketFile>& before, const std::vector<PacketFile>& files);

// Why nothing of this order may go into `out`: the number is another customer's, or the
// place is not one for orders. Empty when it may.
std::string place_fault(const std::filesystem::path& out, const OrderName& order);

}  // namespace bedwright
