#include "sheets/tab_section.h"

#include <fmt/format.h>

#include <algorithm>

#include "export/figures.h"
#include "sheets/marks.h"
#include "sheets/weld_marks.h"

namespace bedwright {
namespace {

constexpr double scale = 4;  // 1 : 4

class TabSection {
 public:
  explicit TabSection(const SheetInput& in) : in_(in), bed_(in.bed), h_(in.job.order.order), pens_(list_) {}

  List2d drawn() {
    for (const char* name : {"main R", "tab R1", "pad R1", "rail R1"})
      if (const int item = bed_.find_item(name); item >= 0) cut_through(item);
    bolt_line();
    across();
    heights();
    welds();
    caption();
    return std::move(list_);
  }

 private:
  Vec2 at(Vec3 p) const { return {p.y / scale, p.z / scale}; }

  // Outline of the item's cut by a plane across the bed.
  void cut_through(int item) {
    const Placement& place = bed_.items[item].placement;
    const Form& form = bed_.part_of(item).form;
    Outline outline;
    if (const Member* m = std::get_if<Member>(&form)) {
      for (const Vertex& v : profile(m->section)) outline.push_back({at(place.point({0, v.at.x, v.at.y})), v.bulge});
      // A profile turned over keeps its shape and loses its sense.
      if (place.y_axis.y * place.z_axis().z < 0)
        for (Vertex& v : outline) v.bulge = -v.bulge;
    } else {
      const Box3 box = bounds(bed_, item);
      outline = rectangle(at(box.low), at(box.high));
    }
    Box2 drawn;
    drawn.join(bounds(Entity(Closed{0, outline})));
    box_.join(drawn);
    list_.add(Closed{pens_.outline, outline});
  }

  Vec3 hole() const {
    Ply ply;
    ply.item = bed_.find_item("tab R1");
    ply.hole = 0;
    return hole_in_world(bed_, ply).centre;
  }

  void bolt_line() {
    const Vec2 p = at(hole());
    list_.add(Line{pens_.centre, {p.x, p.y - 12}, {p.x, box_.high.y - 1}});
  }

  void across() {
    std::vector<Running> places;
    const auto put = [&](Mm y, const char* what) { places.push_back({y / scale, fmt::format("{} {}", what, running_label(y, h_))}); };
    put(in_.job.frame.main.spacing / 2, "web back");
    put(hole().y, "hole");
    put(in_.job.kit.gauge / 2, "rail heel");
    running_along(list_, places, box_.high.y, true, small_text);
  }

  void heights() {
    std::vector<Running> places{{0, "0  top of main"}};
    const auto put = [&](Mm z, const char* what) { places.push_back({z / scale, fmt::format("{}  {}", running_label(z, h_), what)}); };
    put(bed_.track.standoff, "underside of rail");
    if (const int pad = bed_.find_item("pad R1"); pad >= 0) put(bounds(bed_, pad).low.z, "top of tab");
    put(-std::get<Member>(bed_.part_of(bed_.find_item("main R")).form).section.depth, "underside of main");
    running_across(list_, places, box_.low.x, false, small_text);
  }

  // Each weld of the tab and its pad, arrows from the right.
  void welds() {
    Mm y = box_.low.y + 30;
    for (const char* name : {"tab R1", "pad R1"}) {
      const int item = bed_.find_item(name);
      const auto weld = std::find_if(bed_.welds.begin(), bed_.welds.end(), [&](const Weld& w) { return w.a == item; });
      if (item < 0 || weld == bed_.welds.end()) continue;
      const auto alike = std::count_if(bed_.welds.begin(), bed_.welds.end(),
                                       [&](const Weld& w) { return bed_.items[w.a].part == bed_.items[item].part; });
      const Box3 box = bounds(bed_, item);
      const bool pad = name[0] == 'p';
      const bool plate = in_.job.frame.tabs.style == TabStyle::plate;
      const Vec2 tip = pad ? at({0, box.high.y, box.low.z}) : plate ? at({0, in_.job.frame.main.spacing / 2 - 0.4 * weld_run(*weld), 0}) : at({0, in_.job.frame.main.spacing / 2, box.low.z});
      const Vec2 knee{box_.high.x + 12, pad ? tip.y + 5 : y};
      weld_symbol(list_, weld_mark(*weld, static_cast<int>(alike), h_), tip, knee, small_text);
    }
  }

  void caption() {
    const Mm y = bounds(list_).low.y - 8;
    const auto put = [&](Mm at_y, const std::string& s) { list_.add(Text{pens_.text, {box_.low.x, at_y}, small_text, s, Across::left, Up::baseline, 0}); };
    put(y, "SECTION THROUGH TAB R1, LOOKING FORWARD, 1:4; L IS ITS MIRROR IMAGE");
    put(y - 4.5, "Across from the centre line; heights from the top of the main");
  }

  const SheetInput& in_;
  const Bed& bed_;
  const Heading& h_;
  List2d list_;
  Pens pens_;
  Box2 box_;
};

}  // namespace

List2d tab_section(const SheetInput& in) { return TabSection(in).drawn(); }

}  // namespace bedwright
