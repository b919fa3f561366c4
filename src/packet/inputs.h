// What a release was made from, kept within it: inputs/order.yaml and all it names, so that
// the folder can be drawn again by itself.
#pragma once

#include <string>
#include <vector>

#include "packet/packet.h"
#include "packet/record.h"
#include "yaml/problem.h"

namespace bedwright {

inline constexpr const char *inputs_folder = "inputs/", *inputs_order = "inputs/order.yaml";

// `inputs` are the job's files, then letterhead and steps of the assembly sheets. They become
//   inputs/order.yaml, its references rewritten and else byte for byte
//   inputs/kit/NAME, inputs/frame/NAME, inputs/catalog/NAME, inputs/words/
// (A release that revises another keeps that one's beside them: commands/revised.h.)
// What was packed once packs to the same bytes. A problem where a reference cannot be
// rewritten in the order's text, and no files.
std::vector<PacketFile> packed_inputs(const Job& job, const std::vector<InputFile>& inputs,
                                      std::vector<Problem>& problems);

// SHA-256 over the packed inputs: a line "DIGEST  PATH" each, in order of path, as
//   (cd FOLDER; find inputs -type f | LC_ALL=C sort | xargs sha256sum | sha256sum)
// prints it.
std::string digest_of_inputs(const std::vector<PacketFile>& packed);
std::string digest_of_inputs(const Recorded& record);

}  // namespace bedwright
