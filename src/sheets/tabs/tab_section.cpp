// Draws the section at its own scale.
#include "sheets/tabs/tab_section.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

#include "bed/names.h"
#include "sheets/frame/weld_marks.h"
#include "sheets/marks.h"
#include "sheets/part_words.h"
#include "sheets/span.h"

namespace bedwright {
namespace {

constexpr double scale = 4;       // 1 : 4
constexpr Mm symbols_apart = 11;  // one weld symbol over another

class TabSection {
 public:
  explicit TabSection(const SheetInput& in)
      : in_(in),
        bed_(in.bed),
        figures_(in.figures()),
        pens_(list_),
        main_(bed_.item({Kind::main, Side::right})),
        tab_(bed_.item({Kind::tab, Side::right, 1})),
        pad_(bed_.find_item({Kind::tab_pad, Side::right, 1})) {}

  List2d drawn() {
    cut_through(main_);
    cut_through(tab_);
    if (pad_) cut_through(*pad_);
    cut_through(bed_.item({Kind::rail, Side::right, 1}));
    bolt_line();
    across();
    heights();
    // A tab that stands is welded on already.
    if (bed_.part_of(tab_).origin != Origin::standing) welds();
    caption();
    return std::move(list_);
  }

 private:
  Vec2 at(Vec3 p) const { return {p.y / scale, p.z / scale}; }

  // The item cut by a plane across the bed.
  void cut_through(int item) {
    const bool thin = bed_.part_of(item).origin == Origin::standing;
    for (const Outline& cut : cut_across(bed_, item)) {
      const Outline outline = shrunk(cut, scale);
      box_.join(bounds(Entity(Closed{0, outline})));
      list_.add(Closed{thin ? pens_.thin : pens_.outline, outline});
    }
  }

  Vec3 hole() const { return hole_in_world(bed_, ply_through(bed_, tab_, 0)).centre; }

  void bolt_line() {
    const Vec2 p = at(hole());
    list_.add(Line{pens_.centre, {p.x, p.y - 12}, {p.x, box_.high.y - 1}});
  }

  void across() {
    std::vector<Running> places;
    const auto put = [&](Mm y, const char* what) {
      places.push_back({y / scale, fmt::format("{} {}", what, figures_.running(y))});
    };
    put(in_.job.frame.main.spacing / 2, back_word(bed_, main_));
    put(hole().y, "hole");
    put(in_.job.kit.gauge / 2, "rail heel");
    running_along(list_, places, box_.high.y, true, small_text);
  }

  void heights() {
    std::vector<Running> places{{0, "0  top of main"}};
    const auto put = [&](Mm z, const char* what) {
      places.push_back({z / scale, fmt::format("{}  {}", figures_.running(z), what)});
    };
    put(bed_.track.standoff, "underside of rail");
    if (pad_) put(bounds(bed_, *pad_).low.z, "top of tab");
    put(-std::get<Member>(bed_.part_of(main_).form).section.depth, "underside of main");
    running_across(list_, places, box_.low.x, false, small_text);
  }

  // Each weld of the tab and its pad, arrows from the right.
  void welds() {
    const Mm web = in_.job.frame.main.spacing / 2;
    const bool plate = in_.job.frame.tabs.style == TabStyle::plate;
    Mm y = box_.low.y + 30;
    if (pad_) {
      const Box3 pad = bounds(bed_, *pad_);
      const Vec2 tip = at({0, pad.high.y, pad.low.z});
      weld(*pad_, tip, tip.y + 5);
      y = std::min(y, tip.y + 5 - symbols_apart);
    }
    weld(tab_,
         plate ? at({0, web - 0.4 * weld_run(weld_of(tab_)), 0}) : at({0, web, bounds(bed_, tab_).low.z}), y);
  }

  const Weld& weld_of(int item) const {
    const auto weld =
        std::find_if(bed_.welds.begin(), bed_.welds.end(), [&](const Weld& w) { return w.a == item; });
    if (weld == bed_.welds.end()) throw std::logic_error(name(bed_.items[item]) + " is not welded on");
    return *weld;
  }

  void weld(int item, Vec2 tip, Mm y) {
    const auto alike = std::count_if(bed_.welds.begin(), bed_.welds.end(), [&](const Weld& w) {
      return bed_.items[w.a].part == bed_.items[item].part;
    });
    weld_symbol(list_, weld_mark(weld_of(item), static_cast<int>(alike), figures_), tip,
                {box_.high.x + 12, y}, small_text);
  }

  void caption() {
    const Mm y = bounds(list_).low.y - 8;
    const auto put = [&](Mm at_y, const std::string& s) {
      list_.add(Text{pens_.text, {box_.low.x, at_y}, small_text, s, Across::left, Up::baseline, 0});
    };
    put(y, "SECTION THROUGH TAB R1, LOOKING FORWARD, 1:4; L IS ITS MIRROR IMAGE");
    put(y - 4.5, "Across from the centre line; heights from the top of the main");
  }

  const SheetInput& in_;
  const Bed& bed_;
  Figures figures_;
  List2d list_;
  Pens pens_;
  int main_, tab_;
  std::optional<int> pad_;  // none on a clip
  Box2 box_;
};

}  // namespace

List2d tab_section(const SheetInput& in) { return TabSection(in).drawn(); }

}  // namespace bedwright
