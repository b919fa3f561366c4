// Writes the manifest.
#include "packet/packet.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "formats/digest.h"

namespace bedwright {
namespace {

using Json = nlohmann::ordered_json;

void check_path(const std::string& path) {
  const std::filesystem::path p(path);
  const bool plain =
      !path.empty() && p.is_relative() && p.has_filename() && path != manifest_name &&
      std::none_of(p.begin(), p.end(), [](const auto& step) { return step == ".." || step == "."; });
  if (!plain) throw std::invalid_argument(fmt::format("packet: '{}' is no path for a packet's file", path));
}

}  // namespace

OrderName order_name(const Job& job) {
  const Heading& h = job.order.order;
  return {h.number, h.revision, h.customer, h.date, job.kit.name, job.frame.name};
}

std::string manifest(const Packet& packet) {
  std::vector<const PacketFile*> files;
  for (const PacketFile& f : packet.files) {
    check_path(f.path);
    files.push_back(&f);
  }
  std::sort(files.begin(), files.end(), [](const auto* a, const auto* b) { return a->path < b->path; });
  Json list = Json::array();
  for (std::size_t i = 0; i < files.size(); ++i) {
    if (i > 0 && files[i]->path == files[i - 1]->path)
      throw std::invalid_argument(fmt::format("packet: '{}' is given twice", files[i]->path));
    list.push_back({{"path", files[i]->path},
                    {"bytes", files[i]->content.size()},
                    {"sha256", sha256(files[i]->content)}});
  }
  // Same input, same bytes: the build stands here and in no other file of a packet. It is
  // one text for one commit, on any machine, so one program still writes one manifest; and
  // the packets of two builds are held to each other by the digests below.
  const OrderName& o = packet.order;
  const Json json = {{"format", packet_format},
                     {"program", program_name},
                     {"version", packet.version},
                     {"build", packet.build},
                     {"order",
                      {{"number", o.number},
                       {"revision", o.revision},
                       {"customer", o.customer},
                       {"date", o.date},
                       {"kit", o.kit},
                       {"frame", o.frame}}},
                     {"input_sha256", packet.input_digest},
                     {"sets", packet.sets},
                     {"state", word(packet.state)},
                     {"files", list}};
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace bedwright
