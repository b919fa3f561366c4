// Folders that are put in place as a whole, or not at all.
//
// All files are written and synced in the program's own place; then the folder takes its
// name in one system call. A failure, or a killed run, leaves what lay there as it was.
//
// Each throws std::runtime_error with the path and the system's reason when something cannot
// be written.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "packet/packet.h"
#include "packet/workplace.h"

namespace bedwright {

// A new file, whole and synced.
void write_file(const std::filesystem::path& path, const std::string& content);

// The files in a fresh folder of the workplace, all synced. Asked for once of one workplace.
std::filesystem::path filled(const Workplace& place, const std::vector<PacketFile>& files);

// In one system call; `how` as renameat2 takes it. Gives back the system's error, 0 for none.
int renamed(const std::filesystem::path& from, const std::filesystem::path& to, unsigned int how);
[[noreturn]] void fail_to_rename(const std::filesystem::path& to, int error);

// `fresh` takes the name `to`, in the place of what is there when `there` says so, which then
// lies in the workplace and goes with it. What appears meanwhile stays: it throws.
void put_in_place(const std::filesystem::path& fresh, const std::filesystem::path& to, bool there);

void sync_folder(const std::filesystem::path& folder);

// --- Files that are no packet, as a map of sizes: a folder of their own, with a list of them
// as `sha256sum -c LIST` reads it.

// `folder` with the files and the list `list`, in the place of an earlier such folder. Makes
// the folders above it. Throws std::runtime_error, and leaves all alone, when what lies there
// is not what this function wrote: no folder, or one (but an empty folder will do) without
// that list, with a file it does not name, or with one that was changed since.
// They are written in the workplace of `place`, by default the folder above.
void write_listed_folder(const std::filesystem::path& folder, const std::vector<PacketFile>& files,
                         const std::string& list, const std::filesystem::path& place = {});

// Throws as that would, before the files are made.
void check_listed_folder(const std::filesystem::path& folder, const std::string& list);

}  // namespace bedwright
