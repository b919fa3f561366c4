// bedwright draw: examines an order and writes its packet.
#include <fmt/format.h>

#include <stdexcept>
#include <system_error>

#include "commands/home.h"
#include "commands/session.h"
#include "formats/font.h"
#include "packet/earlier.h"

namespace bedwright {

ExitCode draw_command(const DrawArguments& arguments) {
  if (const std::string fault = font_fault(); !fault.empty()) {
    fmt::print(stderr, "bedwright: {}\n", fault);
    return bad_input;
  }
  Progress progress;
  progress.step("laying out");
  const auto loaded = load_and_advise(arguments, progress);
  if (!loaded) return bad_input;
  const Examined& e = *loaded->examined;
  const Heading& heading = e.heading();
  const std::filesystem::path out =
      arguments.out.empty() ? home().out() : std::filesystem::path(arguments.out);
  const std::filesystem::path folder = out / heading.number;
  if (const std::string fault = place_fault(out, heading); !fault.empty()) {
    progress.step("");
    fmt::print(stderr, "bedwright: {}\n", fault);
    return bad_input;
  }
  const bool stop = e.is_stopped();

  Packet packet;
  packet.version = version();
  packet.build = build_name();
  packet.input_digest = input_digest(loaded->inputs, e.job.sets);
  packet.sets = e.job.sets;
  packet.state = arguments.draft ? PacketState::draft : stop ? PacketState::stopped : PacketState::released;
  packet.files = packet_files(packet_input(*loaded, packet.state, progress));

  progress.step("writing");
  std::error_code error;
  std::filesystem::create_directories(out, error);
  if (error) {
    progress.step("");
    fmt::print(stderr, "bedwright: cannot make the folder {}: {}\n", out.string(), error.message());
    return bad_input;
  }
  const auto earlier = earlier_packet(folder);
  try {
    write_packet(folder, packet);
  } catch (const std::runtime_error& refused) {  // a place that cannot be written is the user's to mend
    fmt::print(stderr, "bedwright: {}\n", refused.what());
    return bad_input;
  }
  progress.step("");
  print_findings(e);
  if (earlier) fmt::print("{}\n", replaced_text(*earlier, heading, packet.state));
  const std::string where = std::filesystem::relative(folder).generic_string();
  if (packet.state == PacketState::released)
    fmt::print("Released: {} files in {}/\n", packet.files.size() + 1, where);
  if (packet.state == PacketState::draft)
    fmt::print("Draft, NOT FOR FABRICATION: {} files in {}/\n", packet.files.size() + 1, where);
  if (packet.state == PacketState::stopped)
    fmt::print("Not released: nothing to cut or drill was written; the report is in {}/\n", where);
  return stop ? stopped : released;
}

}  // namespace bedwright
