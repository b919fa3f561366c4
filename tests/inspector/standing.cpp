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

// The figures of every list that the pattern finds in the frame's file, or over it in the order.
std::vector<double> places_in(const Packet& packet, const std::string& in_frame,
                              const std::string& in_order) {
  std::vector<double> places;
  const std::regex figure(R"(([0-9./-]+\s*(?:in|mm)))");
  const auto read = [&](const std::string& text, const std::string& pattern) {
    const std::regex list(pattern);
    for (std::sregex_iterator at(text.begin(), text.end(), list), last; at != last; ++at) {
      const std::string all = (*at)[1];
      for (std::sregex_iterator it(all.begin(), all.end(), figure), end; it != end; ++it)
        places.push_back(millimetres((*it)[1]));
    }
  };
  for (const auto& entry : std::filesystem::directory_iterator(packet.folder / "inputs/frame"))
    read(read_file(entry.path()), in_frame);
  read(read_file(packet.folder / "inputs/order.yaml"), in_order);
  return places;
}

// Where new tabs are asked for, behind the mains' front end, on either side or one.
std::vector<double> places_to_add(const Packet& packet) {
  std::vector<double> places =
      places_in(packet, R"(to_add:\s*\[([^\]]*)\])",
                R"(frame\.tabs\.(?:left\.|right\.)?to_add,\s*value:\s*"?\[([^\]]*)\])");
  const std::string with = R"(with:\s*([0-9./-]+\s*(?:in|mm)))";
  for (const double at : places_in(packet, with, with)) places.push_back(at);
  return places;
}

// Where jacks are bolted on that were not there before.
std::vector<double> jacks_to_add(const Packet& packet) {
  return places_in(packet, R"(jack:[^#]*?to_add:\s*\[([^\]]*)\])",
                   R"(frame\.jack\.to_add,\s*value:\s*"?\[([^\]]*)\])");
}

double front_end(const Packet& packet) {
  double front = 1e300;
  for (const Item& item : packet.model.items)
    if (item.part->name == "main") front = std::min(front, item.box.low.x);
  return front;
}

// Whether the main of the model has that hole through its web.
bool has_hole(const Item& main, double along, double down, double wide) {
  const std::vector<Rim> rims = main.rims_along({0, 1, 0});
  return std::any_of(rims.begin(), rims.end(), [&](const Rim& rim) {
    Box hole;
    for (const Point& p : rim.line) hole.add(p);
    return std::abs(rim.centre.x - along) < 0.1 && std::abs(main.box.high.z - rim.centre.z - down) < 0.1 &&
           std::abs(hole.high.x - hole.low.x - wide) < 0.2;
  });
}

// Each hole that is listed to be drilled in place is in both mains of the model, at its place;
// four for each place that is asked for, and no more.
void check_drilled_in_place(const Packet& packet, Faults& faults) {
  const auto file = packet.folder / "lists/changes.csv";
  if (!std::filesystem::exists(file))
    return faults.add("the frame stands, and there is no list of its changes");
  const Table changes(file);
  const std::string to = R"(\Wto:\s*([0-9./-]+\s*(?:in|mm)))";
  std::vector<double> jacks = places_in(packet, to, to);
  for (const double at : jacks_to_add(packet)) jacks.push_back(at);
  const double front = front_end(packet);
  std::size_t drilled = 0;
  for (std::size_t r = 0; r < changes.rows(); ++r) {
    if (changes.text(r, "do") != "DRILL") continue;
    ++drilled;
    const double from = changes.number(r, "from front ends mm"), down = changes.number(r, "below tops mm"),
                 wide = changes.number(r, "size mm");
    if (std::none_of(jacks.begin(), jacks.end(), [&](double at) { return std::abs(at - from) < 150; }))
      faults.add(
          "a hole is to be drilled in place {:.1f} mm behind the mains' front ends, where no jack is "
          "asked for",
          from);
    for (const Item& item : packet.model.items)
      if (item.part->name == "main" && !has_hole(item, front + from, down, wide))
        faults.add(
            "{}: the model has no hole of {:.1f} mm at x {:.1f}, {:.1f} below its top, where one is to "
            "be drilled in place",
            item.name, wide, front + from, down);
  }
  if (drilled != 4 * jacks.size())
    faults.add("{} holes are to be drilled in place, for {} new places of jacks", drilled, jacks.size());
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
  const double front = front_end(packet);
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
  // What is cut is a new tab's, or the plate of a jack at a place where one is added.
  std::set<std::string> new_parts;
  for (const std::string& name : added) new_parts.insert(packet.model.item(name).part->name);
  const double front = front_end(packet);
  for (const double at : jacks_to_add(packet))
    for (const Item& item : packet.model.items)
      if (packet.form_of(item).starts_with("plate") &&
          std::abs((item.box.low.x + item.box.high.x) / 2 - front - at) < 0.5 &&
          item.box.high.y - item.box.low.y < item.box.high.z - item.box.low.z)
        new_parts.insert(item.part->name);
  for (std::size_t r = 0; r < packet.cut_list.rows(); ++r) {
    const std::string& part = packet.cut_list.text(r, "part");
    if (frame.count(part))
      faults.add("{}: belongs to the frame that stands, and is on the cut list", part);
    else if (!new_parts.count(part))
      faults.add("{}: is on the cut list, and the frame stands and asks for no such thing", part);
  }
  check_drilled_in_place(packet, faults);
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
