// Gathers a packet: its files, and with a release its inputs.
#include "commands/make_packet.h"

#include "packet/inputs.h"

namespace bedwright {

std::optional<Packet> release_packet(const Loaded& loaded, Progress& progress,
                                     std::vector<Problem>& problems) {
  const Job& job = loaded.examined->job;
  const std::vector<PacketFile> inputs = packed_inputs(job, loaded.inputs, problems);
  if (inputs.empty()) return std::nullopt;
  Packet packet{order_name(job),       version(), build_name(), digest_of_inputs(inputs), job.sets,
                PacketState::released, {}};
  packet.files = packet_files(packet_input(loaded, packet.state, progress));
  packet.files.insert(packet.files.end(), inputs.begin(), inputs.end());
  return packet;
}

Packet trial_packet(const Loaded& loaded, bool draft, Progress& progress) {
  const Job& job = loaded.examined->job;
  const PacketState state =
      draft || !loaded.examined->is_stopped() ? PacketState::draft : PacketState::stopped;
  return {order_name(job),
          version(),
          build_name(),
          input_digest(loaded.inputs, job.sets),
          job.sets,
          state,
          packet_files(packet_input(loaded, state, progress))};
}

}  // namespace bedwright
