// Which files a bed's packet holds.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "draw/view.h"
#include "examine/examine.h"
#include "packet/packet.h"
#include "params/assembly_text.h"
#include "sheets/changed.h"

namespace bedwright {

struct PacketInput;

// The release that an order revises, as this program draws it under the order's heading.
struct RevisedInput {
  std::string revision, digest;        // its letter, and of what it was made from
  const PacketInput* drawn = nullptr;  // none: what it was made from cannot be read any more
  std::vector<std::string> changes;    // what became of it, a phrase with figures each
};

struct PacketInput {
  const Examined& examined;
  const AssemblyText& assembly;  // the customer's sheets, filled in
  PacketState state = PacketState::stopped;
  std::string program_version;
  std::string input_digest;                      // of the packet
  std::function<void(const std::string&)> step;  // told what is being made; may be empty
  // What takes the geometry kernel, made beside each other: the bed's views, the text of
  // its STEP file.
  std::function<BedViews()> views;
  std::function<std::string()> model;
  std::optional<RevisedInput> revised = {};
};

struct PacketFiles {
  std::vector<PacketFile> files;
  std::vector<FateOfSheet> sheets;  // against the release revised; empty where there is none
  std::vector<Sheet> drawn;         // the numbered sheets, as issued
};

// With `state` released: everything. draft: report, lists, model, picture and
// sheets. stopped: the report alone. Model, picture and sheets are made side by side.
PacketFiles packet_files(const PacketInput& input);

// Of a released bed only what is neither sheet nor report: model, picture, lists, files to cut
// and to drill.
std::vector<PacketFile> files_beside_sheets(const PacketInput& input);

// SHA-256 over the inputs' contents and the overrides; where the files stand
// does not matter.
std::string input_digest(const std::vector<InputFile>& inputs, const std::vector<std::string>& sets);

}  // namespace bedwright
