// The shop's own words, and how the words of a name are put together.
#include "bed/names.h"

#include <fmt/format.h>

#include <atomic>
#include <charconv>
#include <cmath>
#include <stdexcept>

namespace bedwright {
namespace {

template <class Index>
constexpr std::size_t at(Index index) {
  return static_cast<std::size_t>(index);
}

Words make_shop_words() {
  Words w;
  const auto item = [&](Kind kind, const char* text, const char* part = "") {
    w.item[at(kind)] = text;
    w.part[at(kind)] = *part ? part : text;
  };
  item(Kind::main, "main");
  item(Kind::cross_member, "cross member");
  item(Kind::front_member, "front member");
  item(Kind::rear_member, "rear member");
  item(Kind::end_member, "end member");
  item(Kind::tongue, "tongue");
  item(Kind::tongue_plate, "tongue plate");
  item(Kind::corner_gusset, "corner gusset");
  item(Kind::tab, "tab", "tab plate");
  w.clip_part = "clip tab";
  w.fresh = "new ";
  w.filed = "filed ";
  item(Kind::tab_pad, "pad", "tab pad");
  item(Kind::jack_plate, "jack plate");
  item(Kind::rail, "rail", "rail section");
  item(Kind::bunk, "bunk");
  item(Kind::joint_gusset, "gusset", "joint gusset");
  item(Kind::track_stop, "track stop");
  item(Kind::log_stop, "log stop");
  item(Kind::clamp, "clamp");
  item(Kind::head, "head");
  item(Kind::axle, "axle");
  item(Kind::wheel, "wheel");
  item(Kind::jack, "jack");
  item(Kind::coupler, "coupler");
  item(Kind::tongue_jack, "tongue jack");
  item(Kind::track_bolt, "track bolt");
  item(Kind::bunk_bolt, "bunk bolt");
  item(Kind::gusset_bolt, "gusset bolt");
  item(Kind::stop_bolt, "track stop bolt");
  item(Kind::jack_bolt, "jack bolt");
  item(Kind::tongue_jack_bolt, "tongue jack bolt");
  item(Kind::jack_tube, "jack tube");
  item(Kind::drain, "drain");
  item(Kind::joint, "joint");
  item(Kind::joints, "rail joints");
  item(Kind::track, "track");
  item(Kind::log, "log");
  item(Kind::jacks, "jacks");
  item(Kind::main_web, "main web");
  item(Kind::tab_weld, "tab weld");
  item(Kind::bed, "bed on its jacks");
  item(Kind::tongue_load, "tongue load");
  item(Kind::overall_width, "overall width");
  item(Kind::overall_size, "overall size");
  item(Kind::law, "brakes, lamps and chains");
  item(Kind::bolt_size, "bolts");

  const auto pose = [&](Pose p, const char* of_item, const char* of_part) {
    w.pose[at(p)] = of_item;
    w.part_pose[at(p)] = of_part;
  };
  pose(Pose::locked, " locked", "");
  pose(Pose::running, " running", " running");
  pose(Pose::full_bump, " at full bump", " at full bump");
  pose(Pose::run_down, " run down", " run down");
  pose(Pose::handle_turn, " handle through its turn", " handle");
  pose(Pose::in_outer, ", leaning in, outer end", "");
  pose(Pose::in_inner, ", leaning in, inner end", "");
  pose(Pose::out_outer, ", leaning out, outer end", " leaning out");
  pose(Pose::out_inner, ", leaning out, inner end", " leaning out");
  pose(Pose::between, ", between its ends", " at every place");

  w.piece[at(Piece::head_washer)] = " flat washer";
  w.piece[at(Piece::lower_washer)] = " lower flat washer";
  w.piece[at(Piece::lock_washer)] = " lock washer";
  w.piece[at(Piece::nut)] = " nut";
  w.hardware[at(Piece::whole)] = "bolt";
  w.hardware[at(Piece::head_washer)] = w.hardware[at(Piece::lower_washer)] = "flat washer";
  w.hardware[at(Piece::lock_washer)] = "lock washer";
  w.hardware[at(Piece::nut)] = "nut";

  w.weld_line[at(WeldLine::web_sides)] = "both sides of the web";
  w.weld_line[at(WeldLine::tube_sides)] = "both walls of the tube";
  w.weld_line[at(WeldLine::inner_side)] = "up the main's inner side; bevel and fill over, under and outside";
  w.weld_line[at(WeldLine::plate_ends)] = "both ends of the plate, up the main's side";
  w.weld_line[at(WeldLine::inside_end)] = "inside the main's end; bevel and fill the flush outside";
  w.weld_line[at(WeldLine::outer_edge)] = "outer edge";
  w.weld_line[at(WeldLine::lap_outer)] = "outer edge, under the main";
  w.weld_line[at(WeldLine::lap_inner)] = "inner edge, under the main";
  w.weld_line[at(WeldLine::lap_rear)] = "rear end, under the main";
  w.weld_line[at(WeldLine::under_main)] = "under the main";
  w.weld_line[at(WeldLine::flange_edges)] = "both edges of the flange";
  w.weld_line[at(WeldLine::edge_under_main)] = "edge under the main";
  w.weld_line[at(WeldLine::edge_under_rear)] = "edge under the rear member";
  w.weld_line[at(WeldLine::across_flange)] = "both edges across the flange";
  w.weld_line[at(WeldLine::pad_edges)] = "both edges of the pad";
  w.weld_line[at(WeldLine::clip_ends)] = "both ends of the clip, down the web";
  w.weld_line[at(WeldLine::hangers)] = "spring hangers, as the axle's maker says";

  w.front = "front";
  w.rear = "rear";
  w.left = "L";
  w.right = "R";
  w.on_bunk = " on bunk ";
  return w;
}

std::atomic<const Words*> in_use = nullptr;

std::string length_text(const BoltSize& size, Mm length) {
  const auto tidy = [](Mm x) { return std::round(x * 1e6) / 1e6; };
  return size.metric ? fmt::format("{:g} mm", tidy(length)) : fmt::format("{:g} in", tidy(length / inch));
}

std::string end_word(End end) {
  return end == End::none ? "" : end == End::front ? words().front : words().rear;
}

// "R7", "2", "R1.3".
std::string side_and_number(const Identity& id) {
  std::string text = letter(id.side);
  if (id.number > 0) text += std::to_string(id.number);
  if (id.of > 0) text += (id.number > 0 ? "." : "") + std::to_string(id.of);
  return text;
}

Piece piece_of(HardwareKind kind) {
  switch (kind) {
    case HardwareKind::bolt:
      return Piece::whole;
    case HardwareKind::nut:
      return Piece::nut;
    case HardwareKind::flat_washer:
      return Piece::head_washer;
    case HardwareKind::lock_washer:
      break;
  }
  return Piece::lock_washer;
}

}  // namespace

const Words& shop_words() {
  static const Words made = make_shop_words();
  return made;
}

const Words& words() {
  const Words* other = in_use.load(std::memory_order_relaxed);
  return other ? *other : shop_words();
}

WordsInUse::WordsInUse(Words other) : before_(in_use.load()), mine_(std::move(other)) { in_use = &mine_; }
WordsInUse::~WordsInUse() { in_use = before_; }

const std::string& letter(Side side) {
  static const std::string none;
  return side == Side::left ? words().left : side == Side::right ? words().right : none;
}

std::string rail_lengths(const Track& track, const std::function<std::string(Mm)>& say) {
  if (track.sections_alike()) return say(track.rail_length);
  std::string text;
  for (std::size_t i = 0; i < track.lengths.size(); ++i)
    text += (i == 0 ? "" : i + 1 == track.lengths.size() ? " and " : ", ") + say(track.lengths[i]);
  return text;
}

const std::string& word(Kind kind) { return words().item[at(kind)]; }
const std::string& word(HardwareKind kind) { return words().hardware[at(piece_of(kind))]; }
const std::string& words_of(WeldLine line) { return words().weld_line[at(line)]; }

std::string mark(const Identity& id) {
  const std::string end = end_word(id.end), number = side_and_number(id);
  return end + (end.empty() || number.empty() ? "" : " ") + number;
}

NameInTwo name_in_two(const Identity& id) {
  const Words& w = words();
  NameInTwo both{w.item[at(id.kind)], side_and_number(id)};
  if (id.end != End::none) both.kind += " " + end_word(id.end);
  std::string& last = both.which.empty() ? both.kind : both.which;
  if (id.bunk > 0) last += w.on_bunk + std::to_string(id.bunk);
  last += w.pose[at(id.pose)] + w.piece[at(id.piece)];
  return both;
}

Identity tab_called(const std::string& text) {
  int number = 0;
  const char *from = text.data() + 1, *end = text.data() + text.size();
  const bool side = text.size() > 1 && (text[0] == 'L' || text[0] == 'R');
  if (!side || std::from_chars(from, end, number).ptr != end || number < 1)
    throw std::invalid_argument("no tab is called " + text);
  return {Kind::tab, text[0] == 'L' ? Side::left : Side::right, number};
}

NameInTwo name_in_two(const Part& part) {
  const Words& w = words();
  if (const auto* h = std::get_if<Hardware>(&part.form)) {
    const std::string size = h->kind == HardwareKind::bolt ? " x " + length_text(h->size, h->length) : "";
    std::string asked;
    for (const std::string& of : {h->grade, h->coating})
      if (!of.empty()) asked += ", " + of;
    return {w.hardware[at(piece_of(h->kind))], h->size.name + size + asked};
  }
  const bool clip = part.id.kind == Kind::tab && std::holds_alternative<Member>(part.form);
  const bool tab = part.id.kind == Kind::tab || part.id.kind == Kind::tab_pad;
  const bool jack = part.id.kind == Kind::jack || part.id.kind == Kind::jack_plate;
  const std::string made = (tab || jack) && part.id.of > 0 ? w.fresh : "",
                    filed = tab && part.id.number > 0 ? w.filed + std::to_string(part.id.number) : "";
  return {made + (clip ? w.clip_part : w.part[at(part.id.kind)]) + w.part_pose[at(part.id.pose)],
          part.id.kind == Kind::rail ? side_and_number(part.id)
          : filed.empty()            ? letter(part.id.side)
                                     : filed};
}

std::string name(const Identity& id) { return name_in_two(id).whole(); }
std::string name(const Item& item) { return name(item.id); }
std::string name(const Bolt& bolt) { return name(bolt.id); }
std::string name(const Part& part) { return name_in_two(part).whole(); }

}  // namespace bedwright
