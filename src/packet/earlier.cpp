// Reads an earlier packet's manifest and report, and says what would be replaced.
#include "packet/earlier.h"

#include <fmt/format.h>

#include <fstream>
#include <nlohmann/json.hpp>

namespace bedwright {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::json;

// What is no JSON, or is not there, reads as null.
Json json_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return in ? Json::parse(in, nullptr, false) : Json();
}

std::string text_at(const Json& json, const char* key) {
  const auto found = json.is_object() ? json.find(key) : json.end();
  return found != json.end() && found->is_string() ? found->get<std::string>() : std::string();
}

}  // namespace

std::optional<EarlierPacket> earlier_packet(const fs::path& folder) {
  const Json manifest = json_of(folder / "manifest.json");
  if (text_at(manifest, "program") != "bedwright") return std::nullopt;
  const Json report = json_of(folder / "report.json");
  const Json order = report.is_object() ? report.value("order", Json()) : Json();
  return EarlierPacket{text_at(manifest, "state"), text_at(order, "number"), text_at(order, "customer"),
                       text_at(order, "date"), text_at(order, "revision")};
}

std::string place_fault(const fs::path& out, const Heading& heading) {
  if (const auto above = earlier_packet(out)) {
    const std::string whose = above->number.empty() ? "an order" : "order " + above->number;
    return fmt::format(
        "{} holds the files of {} itself; nothing was touched: --out names the folder above, which gets one "
        "folder an order",
        out.string(), whose);
  }
  const fs::path folder = out / heading.number;
  const auto earlier = earlier_packet(folder);
  if (!earlier || earlier->number.empty() || earlier->number == heading.number) return {};
  return fmt::format(
      "{} holds the {} of order {}, not of {}; nothing was touched: give another folder with --out, or move "
      "that one away",
      folder.string(), earlier->state == "released" ? "release" : "files", earlier->number, heading.number);
}

std::string replaced_text(const EarlierPacket& earlier, const Heading& heading, PacketState state) {
  const bool released = earlier.state == "released";
  std::string text = released                   ? "Replaces the release"
                     : earlier.state == "draft" ? "Replaces the draft"
                                                : "Replaces the report of a stopped order";
  if (!earlier.number.empty())
    text += fmt::format("{} {}, order {} revision {}", released || earlier.state == "draft" ? " of" : ",",
                        earlier.date, earlier.number, earlier.revision);
  if (!earlier.customer.empty() && earlier.customer != heading.customer)
    text += fmt::format(", for {}", earlier.customer);
  if (released && state != PacketState::released)
    text += "; its cut and drill files are gone from there, do not use copies of them";
  return text + ".";
}

}  // namespace bedwright
