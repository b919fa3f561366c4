// What the packet's own inputs state of the frame: where it stands already, nothing of it
// is cut, drilled, sawn or welded again; cross members are no further apart than it says.
#include <algorithm>
#include <cmath>
#include <filesystem>
#include <map>
#include <regex>
#include <set>
#include <sstream>

#include "packet.h"

namespace inspector {

namespace {

// The last figure given for a key: in the frame's file, or over it in the order.
std::string stated(const Packet& packet, const std::string& key) {
  std::string value;
  std::smatch found;
  const auto last = [&](const std::string& text, const std::string& pattern) {
    const std::regex line(pattern);
    for (std::sregex_iterator it(text.begin(), text.end(), line), end; it != end; ++it) value = (*it)[1];
  };
  for (const auto& entry : std::filesystem::directory_iterator(packet.folder / "inputs/frame"))
    last(read_file(entry.path()), key + R"(:\s*([0-9./ -]+(?:in|mm)))");
  last(read_file(packet.folder / "inputs/order.yaml"), key + R"(,\s*value:\s*"?([0-9./ -]+(?:in|mm)))");
  return value;
}

// "36 in", "1-1/4 in", "5/8 in", "900 mm".
double millimetres(const std::string& text) {
  const double unit = text.ends_with("in") ? 25.4 : 1;
  std::istringstream in(text);
  double whole = 0, over = 0, under = 1;
  char mark = 0;
  in >> whole;
  if (in.peek() == '/') {
    in >> mark >> under;
    return unit * whole / under;
  }
  if (in.peek() == '-') in >> mark >> over >> mark >> under;
  return unit * (whole + over / under);
}

void check_spacing(const Packet& packet, Faults& faults) {
  const std::string most = stated(packet, "max_spacing");
  if (most.empty()) return;
  // What is welded to both mains and lies between them: their middles along the bed. A web
  // stands up to half a flange off the middle, so an inch is allowed at each.
  std::map<std::string, std::set<std::string>> welded_to;
  for (std::size_t r = 0; r < packet.welds.rows(); ++r)
    welded_to[packet.welds.text(r, "part")].insert(packet.welds.text(r, "to"));
  std::vector<double> places;
  for (const auto& [part, to] : welded_to) {
    const Item& item = packet.model.item(part);
    const std::string& form = packet.form_of(item);
    if (to.size() == 2 && form.starts_with("C")) places.push_back((item.box.low.x + item.box.high.x) / 2);
  }
  std::sort(places.begin(), places.end());
  for (std::size_t i = 1; i < places.size(); ++i)
    if (const double apart = places[i] - places[i - 1]; apart > millimetres(most) + 2 * 25.4)
      faults.add("cross members at x {:.0f} and {:.0f} are {:.0f} mm apart, the frame says {} at most",
                 places[i - 1], places[i], apart, most);
}

// Where the frame's file asks for new tabs, behind the mains' front end.
std::vector<double> places_to_add(const Packet& packet) {
  std::vector<double> places;
  const auto read = [&](const std::string& text, const char* pattern) {
    const std::regex list(pattern), figure(R"(([0-9./-]+\s*(?:in|mm)))");
    std::smatch found;
    if (!std::regex_search(text, found, list)) return;
    const std::string all = found[1];
    for (std::sregex_iterator it(all.begin(), all.end(), figure), end; it != end; ++it)
      places.push_back(millimetres((*it)[1]));
  };
  const auto read_replaced = [&](const std::string& text) {
    const std::regex with(R"(with:\s*([0-9./-]+\s*(?:in|mm)))");
    for (std::sregex_iterator it(text.begin(), text.end(), with), end; it != end; ++it)
      places.push_back(millimetres((*it)[1]));
  };
  for (const auto& entry : std::filesystem::directory_iterator(packet.folder / "inputs/frame")) {
    read(read_file(entry.path()), R"((?:^|\n)[ \t]*to_add:\s*\[([^\]]*)\])");
    read_replaced(read_file(entry.path()));
  }
  read_replaced(read_file(packet.folder / "inputs/order.yaml"));
  read(read_file(packet.folder / "inputs/order.yaml"), R"(frame\.tabs\.to_add,\s*value:\s*"?\[([^\]]*)\])");
  return places;
}

// What stands at those places and is welded there for the first time: two tabs at each, and
// a pad on each.
std::set<std::string> added_items(const Packet& packet, Faults& faults) {
  const std::vector<double> places = places_to_add(packet);
  std::set<std::string> standing, added;
  for (std::size_t r = 0; r < packet.welds.rows(); ++r)
    if (r >= packet.welds_to_lay.rows())
      for (const char* end : {"part", "to"}) standing.insert(packet.welds.text(r, end));
  if (places.empty()) return {};
  double front = 1e300;
  for (const Item& item : packet.model.items)
    if (item.part->name == "main") front = std::min(front, item.box.low.x);
  for (std::size_t r = 0; r < packet.welds_to_lay.rows(); ++r) {
    const std::string& name = packet.welds_to_lay.text(r, "part");
    const Item& item = packet.model.item(name);
    const double middle = (item.box.low.x + item.box.high.x) / 2 - front;
    if (std::any_of(places.begin(), places.end(), [&](double at) { return std::abs(at - middle) < 0.5; }) &&
        !standing.count(name))
      added.insert(name);
  }
  if (added.size() > 4 * places.size())
    faults.add("{} new things are welded to the frame that stands, its file asks for tabs at {} places",
               added.size(), places.size());
  return added;
}

}  // namespace

void check_standing(const Packet& packet, Faults& faults) {
  bool stands = false, yet_to_be_made = false;
  const auto folder = packet.folder / "inputs/frame";
  if (!std::filesystem::exists(folder)) return faults.add("the packet does not hold its frame file");
  check_spacing(packet, faults);
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    const std::string text = read_file(entry.path());
    if (std::regex_search(text, std::regex("(^|\n)[ \t{]*(existing:|standing:[ \t]*true)"))) stands = true;
    // A drawing whose tabs have fixed places says so.
    if (std::regex_search(text, std::regex("(^|\n)standing:[ \t]*false"))) yet_to_be_made = true;
  }
  if (!stands || yet_to_be_made) return;
  // The frame is what fillets join, but for the new tabs that its file asks for.
  const std::set<std::string> added = added_items(packet, faults);
  std::set<std::string> frame;
  for (std::size_t r = 0; r < packet.welds.rows(); ++r)
    if (packet.welds.text(r, "kind") == "fillet")
      for (const char* end : {"part", "to"})
        if (const std::string& item = packet.welds.text(r, end); !added.count(item))
          frame.insert(packet.model.item(item).part->name);
  for (std::size_t r = 0; r < packet.cut_list.rows(); ++r)
    if (frame.count(packet.cut_list.text(r, "part")))
      faults.add("{}: belongs to the frame that stands, and is on the cut list",
                 packet.cut_list.text(r, "part"));
  for (const char* kind : {"cut", "drill"}) {
    if (!std::filesystem::exists(packet.folder / kind)) continue;
    for (const auto& entry : std::filesystem::directory_iterator(packet.folder / kind))
      for (const std::string& part : frame)
        if (std::string word = part;
            std::replace(word.begin(), word.end(), ' ', '_'), entry.path().stem().string().starts_with(word))
          faults.add("{}: belongs to the frame that stands, and has a {} file", part, kind);
  }
  for (std::size_t r = 0; r < packet.welds_to_lay.rows(); ++r) {
    const std::string &part = packet.welds_to_lay.text(r, "part"), &to = packet.welds_to_lay.text(r, "to");
    if (!added.count(part) && !added.count(to))
      faults.add("{} to {}: stands, and is on the list of welds to lay", part, to);
  }
  std::set<std::string> told;
  for (std::size_t r = 0; r < packet.drill_list.rows(); ++r)
    if (frame.count(packet.drill_list.text(r, "part")) &&
        told.insert(packet.drill_list.text(r, "part")).second)
      faults.add("{}: belongs to the frame that stands, and is on the drill list",
                 packet.drill_list.text(r, "part"));
}

}  // namespace inspector
