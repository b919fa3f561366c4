// Draws each picture the words may name.
#include "sheets/assembly/assembly_pictures.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

#include "bed/names.h"
#include "sheets/assembly/assembly_figures.h"
#include "sheets/bolts/bolt_kinds.h"
#include "sheets/plan.h"
#include "sheets/span.h"
#include "sheets/tabs/tab_rows.h"

namespace bedwright {
namespace {

constexpr Mm band_high = 9, band_at = 24;  // of a rail in the strip, and its middle from the centre line
constexpr double section_scale = 2;        // 1 : 2

void rails(List2d& list, const Pens& pens, const SheetInput& in, Side side, double k) {
  const Mm middle = outward(side) * band_at;
  for (int s = 1; s <= in.bed.track.sections; ++s) {
    const Identity rail{Kind::rail, side, s};
    const Box3 box = bounds(in.bed, in.bed.item(rail));
    list.add(Closed{pens.outline, rectangle({k * box.low.x, middle - band_high / 2},
                                            {k * box.high.x, middle + band_high / 2})});
    list.add(Text{pens.text,
                  {k * (box.low.x + box.high.x) / 2, middle},
                  large_text,
                  mark(rail),
                  Across::centre,
                  Up::middle,
                  0});
  }
}

// What a bunk carries, in letters: C a clamp, S a log stop.
std::string carries(const TrackOrder& track, int bunk) {
  std::string letters;
  if (std::any_of(track.clamps.begin(), track.clamps.end(),
                  [&](const ClampPlace& c) { return c.bunk == bunk; }))
    letters += "C";
  if (std::find(track.log_stops.begin(), track.log_stops.end(), bunk) != track.log_stops.end())
    letters += letters.empty() ? "S" : "+S";
  return letters;
}

// Names of things with the place each is pointed at, in a column from the top down.
struct Named {
  Vec2 at;
  std::string name;
};

void column(List2d& list, std::vector<Named> all, Mm x, Mm apart) {
  std::sort(all.begin(), all.end(), [](const Named& a, const Named& b) { return a.at.y > b.at.y; });
  Mm y = all.empty() ? 0 : all.front().at.y + apart;
  for (const Named& n : all) {
    y = std::min(y - apart, n.at.y);
    leader(list, n.at, {x, y}, n.name, bench_text);
  }
}

// "bolt A, 1/2 in x 1-1/4 in, head up".
std::string bolt_words(const SheetInput& in, int bolt) {
  for (const BoltKind& kind : track_bolt_kinds(in))
    if (std::find(kind.bolts.begin(), kind.bolts.end(), bolt) != kind.bolts.end())
      return fmt::format("bolt {}, {} x {}, head up", kind.letter, kind.size.name,
                         bolt_length_text(kind.size, kind.length));
  throw std::logic_error("a track bolt in place is of no kind");
}

// The hardware of that bolt, each piece where it is, with what it is called.
std::vector<Named> hardware(List2d& list, const Pens& pens, const SheetInput& in, int bolt, double k) {
  const Bed& bed = in.bed;
  std::vector<Named> names;
  for (std::size_t i = 0; i < bed.items.size(); ++i) {
    const Item& item = bed.items[i];
    if (item.bolt != bolt) continue;
    const Hardware& piece = std::get<Hardware>(bed.part_of(static_cast<int>(i)).form);
    const Box3 box = bounds(bed, static_cast<int>(i));
    const Mm middle = (box.low.y + box.high.y) / 2, right = box.high.y, z = (box.low.z + box.high.z) / 2;
    const auto draw = [&](Mm half, Mm low, Mm high) {
      list.add(
          Closed{pens.outline, rectangle({k * (middle - half), k * low}, {k * (middle + half), k * high})});
    };
    if (piece.kind == HardwareKind::bolt) {
      draw(piece.size.head_flats / 2, box.high.z - piece.size.head_height, box.high.z);
      draw(piece.size.diameter / 2, box.low.z, box.high.z - piece.size.head_height);
      names.push_back({{k * middle, k * (box.high.z - piece.size.head_height / 2)}, bolt_words(in, bolt)});
    } else {
      draw((box.high.y - box.low.y) / 2, box.low.z, box.high.z);
      names.push_back({{k * (right - 1), k * z},
                       word(piece.kind) + (item.id.piece == Piece::head_washer ? " under the head" : "")});
    }
  }
  return names;
}

}  // namespace

List2d section_strip(const SheetInput& in, Mm space) {
  const Track& track = in.bed.track;
  const int scale = reduction(track.total_length, space - 60);
  const double k = 1.0 / scale;
  List2d list;
  const Pens pens(list);
  for (const Side side : {Side::right, Side::left}) rails(list, pens, in, side, k);
  std::vector<Tag> numbers, loads, jacks;
  int number = 0;
  for (const BunkPlace& bunk : track.bunks) {
    numbers.push_back({k * bunk.x, fmt::format("{}", ++number)});
    if (const std::string what = carries(in.job.order.track, number); !what.empty())
      loads.push_back({k * bunk.x, what});
  }
  std::vector<Mm> pairs = in.job.order.jacks;
  std::sort(pairs.begin(), pairs.end());
  for (std::size_t j = 0; j < pairs.size(); ++j) jacks.push_back({k * pairs[j], fmt::format("J{}", j + 1)});
  const Mm inner = band_at - band_high / 2, outer = band_at + band_high / 2;
  // Many bunks' numbers stand closer, in smaller letters; more than have room, some of them.
  const Mm row = static_cast<double>(numbers.size()) * (text_width("88", bench_text) + 0.4 * bench_text);
  const Mm letters = row > space - 40 ? small_text : bench_text;
  const int every = thin_out(numbers, letters, space - 60);
  tag_row(list, numbers, inner - 0.5, inner - 9, letters, pens.text);
  tag_row(list, loads, -inner + 0.5, -inner + 5.5, bench_text, pens.text);
  tag_row(list, jacks, -outer - 0.5, -outer - 9, bench_text, pens.text);
  const Box2 box = bounds(list);
  const auto word = [&](Mm x, Mm y, const char* text, Across across) {
    list.add(Text{pens.text, {x, y}, bench_text, text, across, Up::middle, 0});
  };
  word(box.low.x - 3, 0, "FRONT", Across::right);
  word(box.high.x + 3, 0, "REAR", Across::left);
  const auto line = [&](Mm y, const std::string& text) {
    list.add(Text{pens.text, {0, y}, bench_text, text, Across::left, Up::baseline, 0});
  };
  line(outer + 3,
       "RAIL SECTIONS FROM ABOVE: R on the right, L on the left, facing forward, numbered front to rear");
  line(box.low.y - 7, fmt::format("Between the rails: bunk numbers{}; S a log stop, C a clamp. J: a pair of "
                                  "jacks. 1:{} along, not to scale across",
                                  every_words(every), scale));
  return list;
}

List2d rail_on_tab(const SheetInput& in) {
  const Bed& bed = in.bed;
  const double k = 1 / section_scale;
  List2d list;
  const Pens pens(list);
  std::vector<Named> names;
  const auto cut = [&](int item, const char* what, double down) {
    for (const Outline& outline : cut_across(bed, item))
      list.add(Closed{pens.outline, shrunk(outline, section_scale)});
    const Box3 box = bounds(bed, item);
    names.push_back({{k * (box.high.y - 2), k * (box.high.z - down * (box.high.z - box.low.z))}, what});
  };
  const int tab = bed.item({Kind::tab, Side::right, 1});
  cut(bed.item({Kind::rail, Side::right, 1}), "rail, standing leg outward", 0.3);
  if (const auto pad = bed.find_item({Kind::tab_pad, Side::right, 1})) cut(*pad, "pad, part of the tab", 0.5);
  if (in.job.frame.tabs.style == TabStyle::plate) {
    cut(tab, "tab, welded to the main", 0.5);
  } else {
    cut(tab, "tab, an angle welded to the main", 0.04);  // its flat leg is on top
  }
  cut(bed.item({Kind::main, Side::right}), "main of the frame", 0.75);
  if (const auto bolt = track_bolt_through(bed, tab)) {
    const std::vector<Named> pieces = hardware(list, pens, in, *bolt, k);
    names.insert(names.end(), pieces.begin(), pieces.end());
  }
  const Box2 box = bounds(list);
  column(list, names, box.high.x + 8, 6.5);
  const Mm under = bounds(list).low.y;
  const auto line = [&](Mm y, const char* text) {
    list.add(Text{pens.text, {box.low.x, y}, bench_text, text, Across::left, Up::baseline, 0});
  };
  line(under - 7, "RAIL ON A TAB, right side, looking forward, 1:2");
  line(under - 13, "The left side is its mirror image");
  return list;
}

}  // namespace bedwright
