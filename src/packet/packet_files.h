// Which files a bed's packet holds.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "draw/view.h"
#include "examine/examine.h"
#include "packet/packet.h"
#include "params/assembly_text.h"

namespace bedwright {

struct PacketInput {
  const Examined& examined;
  const AssemblyText& assembly;  // the customer's sheets, filled in
  PacketState state = PacketState::stopped;
  std::string program_version;
  std::function<void(const std::string&)> step;  // told what is being made; may be empty
  // What takes the geometry kernel, made beside each other: the bed's views, the text of
  // its STEP file.
  std::function<BedViews()> views;
  std::function<std::string()> model;
};

// With `state` released: everything. draft: report, lists, model, picture and
// sheets. stopped: the report alone. Model, picture and sheets are made side by side.
std::vector<PacketFile> packet_files(const PacketInput& input);

// SHA-256 over the inputs' contents and the overrides; where the files stand
// does not matter.
std::string input_digest(const std::vector<InputFile>& inputs, const std::vector<std::string>& sets);

}  // namespace bedwright
