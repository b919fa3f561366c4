// Gathers a packet: its files, and with a release its inputs.
#include "commands/make_packet.h"

#include "packet/inputs.h"

namespace bedwright {

std::optional<MadeRelease> make_release(const Loaded& loaded, std::optional<Revised> revised,
                                        Progress& progress, std::vector<Problem>& problems) {
  const Job& job = loaded.examined->job;
  std::vector<PacketFile> inputs = packed_inputs(job, loaded.inputs, problems);
  if (inputs.empty()) return std::nullopt;
  MadeRelease made;
  made.revised = std::move(revised);
  if (made.revised) inputs.insert(inputs.end(), made.revised->kept.begin(), made.revised->kept.end());
  const std::string digest = digest_of_inputs(inputs);
  PacketInput input = packet_input(loaded, PacketState::released, digest, progress);
  std::optional<PacketInput> earlier;
  if (made.revised) {
    progress.step("reading revision " + made.revised->revision);
    made.bed = revised_bed(*made.revised, job, made.unreadable);
    input.revised = {made.revised->revision, made.revised->digest, nullptr, {}};
    if (made.bed) {
      earlier.emplace(packet_input(made.bed->headed, PacketState::released, digest, progress));
      input.revised->drawn = &*earlier;
      input.revised->changes = change_phrases(compared(made.bed->was, loaded));
      made.beside_sheets = files_beside_sheets(*earlier);
    }
  }
  PacketFiles files = packet_files(input);
  made.sheets = std::move(files.sheets);
  made.drawn = std::move(files.drawn);
  made.packet = {order_name(job),       version(), build_name(), digest, job.sets, PacketState::released,
                 std::move(files.files)};
  made.packet.files.insert(made.packet.files.end(), inputs.begin(), inputs.end());
  return made;
}

Packet trial_packet(const Loaded& loaded, bool draft, Progress& progress) {
  const Job& job = loaded.examined->job;
  const PacketState state =
      draft || !loaded.examined->is_stopped() ? PacketState::draft : PacketState::stopped;
  const std::string digest = input_digest(loaded.inputs, job.sets);
  return {order_name(job),
          version(),
          build_name(),
          digest,
          job.sets,
          state,
          packet_files(packet_input(loaded, state, digest, progress)).files};
}

}  // namespace bedwright
