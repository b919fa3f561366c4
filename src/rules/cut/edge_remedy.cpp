// Which size of order, kit or frame lies behind each hole, and what it would have to be.
#include "rules/cut/edge_remedy.h"

#include <fmt/format.h>

namespace bedwright {
namespace {

// One size that could be another.
struct Size {
  std::string key;
  Mm now = 0;
  double per = 0;          // how much it changes for each millimetre the hole is short
  const char* words = "";  // with a place for the new size
};

constexpr const char* by_the_sheet = "";  // the maker's: said by its key

// The hole a kit or a frame states for a bolt, and its key.
struct Stated {
  const char* key;
  const BoltHole* hole;
};

std::optional<Stated> stated(const Job& job, Kind bolt) {
  switch (bolt) {
    case Kind::track_bolt:
      return Stated{"kit.mounting.hole", &job.kit.mounting.hole};
    case Kind::bunk_bolt:
      return Stated{"kit.bunk.hole", &job.kit.bunk.hole};
    case Kind::gusset_bolt:
      return Stated{"kit.gusset.hole", &job.kit.gusset.hole};
    case Kind::stop_bolt:
      return Stated{"kit.track_stop.hole", &job.kit.track_stop.hole};
    case Kind::jack_bolt:
      return Stated{"frame.jack.hole", &job.frame.jack.hole};
    case Kind::tongue_jack_bolt:
      return Stated{"frame.tongue_jack.hole", &job.frame.tongue_jack.hole};
    default:
      return std::nullopt;
  }
}

// A slot that runs toward the side it is short on can be shorter; a tab's is the frame's own.
void add_slot(const Job& job, const HoleShort& lack, Vec3 slot_axis, std::vector<Size>& sizes) {
  if (!lack.hole.slotted() || std::abs(dot(slot_axis, lack.toward)) < 0.9) return;
  const Kind part = lack.part.id.kind;
  if (part == Kind::tab || part == Kind::tab_pad) {
    sizes.push_back(
        {"frame.tabs.slot_length", job.frame.tabs.slot_length, -2, "make the tabs' slots {} long"});
    return;
  }
  const auto of = stated(job, lack.hole.purpose);
  if (of && of->hole->slot)
    sizes.push_back({std::string(of->key) + ".slot", *of->hole->slot, -2, by_the_sheet});
}

enum class Way { along, outward, inward, upright };

Way way_of(Vec3 toward, Side side) {
  if (std::abs(toward.x) >= std::abs(toward.y) && std::abs(toward.x) >= std::abs(toward.z)) return Way::along;
  if (std::abs(toward.z) > std::abs(toward.y)) return Way::upright;
  return toward.y * (side == Side::left ? -1 : 1) > 0 ? Way::outward : Way::inward;
}

void add_tab(const Job& job, Kind part, Way way, Mm length_now, std::vector<Size>& sizes) {
  const FrameTabs& t = job.frame.tabs;
  if (way == Way::along)
    return sizes.push_back({"frame.tabs.length", length_now, 2, "make the tabs {} long"});
  if (t.style != TabStyle::plate || !t.plate) return;
  const PlateTab& p = *t.plate;
  if (part == Kind::tab_pad)
    return sizes.push_back({"frame.tabs.plate.pad_width", p.pad_width, 2, "make the pads {} wide"});
  if (way == Way::outward)
    sizes.push_back({"frame.tabs.plate.outboard", p.outboard, 1,
                     "let the tab plates reach {} outboard of the web's back"});
  else
    sizes.push_back(
        {"frame.tabs.plate.inboard", p.inboard, 1, "let the tab plates reach {} inboard of the web's back"});
}

void add_jack(const FrameJack& j, Way way, std::vector<Size>& sizes) {
  if (way == Way::along) {
    sizes.push_back({"frame.jack.plate_length", j.plate_length, 2, "take jacks and plates {} long"});
    sizes.push_back({"frame.jack.bolt_x", j.bolt_x, -2, "put the jacks' bolts {} apart along the main"});
  } else {
    sizes.push_back({"frame.jack.plate_height", j.plate_height, 2, "take jacks and plates {} high"});
    sizes.push_back({"frame.jack.bolt_z", j.bolt_z, -2, "put the jacks' bolts {} apart up and down"});
  }
}

// Toward the free edge of the flat leg, or the end of the section.
void add_rail(const Kit& kit, Kind bolt, Way way, std::vector<Size>& sizes) {
  const bool along = way == Way::along;
  if (bolt == Kind::track_bolt && (!along || kit.mounting.positions.empty()))
    sizes.push_back(along ? Size{"kit.mounting.end_offset", kit.mounting.end_offset, 1, by_the_sheet}
                          : Size{"kit.mounting.line", kit.mounting.line, -1, by_the_sheet});
  if (bolt == Kind::bunk_bolt && (!along || kit.bunk.positions.empty()))
    sizes.push_back(along ? Size{"kit.bunk.outer_set", kit.bunk.outer_set, 1, by_the_sheet}
                          : Size{"kit.bunk.line", kit.bunk.line, -1, by_the_sheet});
  if (bolt == Kind::stop_bolt)
    sizes.push_back(along ? Size{"kit.track_stop.from_end", kit.track_stop.from_end, 1, by_the_sheet}
                          : Size{"kit.track_stop.line", kit.track_stop.line, -1, by_the_sheet});
  if (bolt == Kind::gusset_bolt && !along)
    sizes.push_back({"kit.gusset.bottom", kit.gusset.bottom, -1, by_the_sheet});
  if (bolt == Kind::gusset_bolt && along && !kit.gusset.bolts.empty())
    sizes.push_back({"kit.gusset.bolts[1]", kit.gusset.bolts.front(), 1, by_the_sheet});
}

std::vector<Size> behind_edge(const Scene& scene, const HoleShort& lack, Way way) {
  const Job& job = *scene.input.job;
  const Kit& kit = job.kit;
  std::vector<Size> sizes;
  const Box3& box = scene.boxes[lack.item];
  switch (lack.part.id.kind) {
    case Kind::tab:
    case Kind::tab_pad:
      add_tab(job, lack.part.id.kind, way, box.high.x - box.low.x, sizes);
      break;
    case Kind::jack:
    case Kind::jack_plate:
      add_jack(job.frame.jack, way, sizes);
      break;
    case Kind::tongue_plate:
      if (way == Way::along)
        sizes.push_back({"frame.tongue_jack.plate_length", job.frame.tongue_jack.plate_length, 2,
                         "make the tongue plate {} long"});
      sizes.push_back({"frame.tongue_jack.bolt_circle", job.frame.tongue_jack.bolt_circle, -2,
                       "take a tongue jack with a bolt circle of {}"});
      break;
    case Kind::main:
      if (way == Way::upright)
        sizes.push_back(
            {"frame.jack.bolt_z", job.frame.jack.bolt_z, -2, "put the jacks' bolts {} apart up and down"});
      break;
    case Kind::rail:
      add_rail(kit, lack.hole.purpose, way, sizes);
      break;
    case Kind::bunk:
      sizes.push_back(way == Way::along ? Size{"kit.bunk.flat_leg", kit.bunk.flat_leg, 2, by_the_sheet}
                                        : Size{"kit.bunk.line", kit.bunk.line, 1, by_the_sheet});
      break;
    case Kind::joint_gusset:
      sizes.push_back(way == Way::along ? Size{"kit.gusset.length", kit.gusset.length, 2, by_the_sheet}
                                        : Size{"kit.gusset.height", kit.gusset.height, 2, by_the_sheet});
      break;
    case Kind::track_stop:
      sizes.push_back(way == Way::along
                          ? Size{"kit.track_stop.foot_length", kit.track_stop.foot_length, 2, by_the_sheet}
                          : Size{"kit.track_stop.foot_width", kit.track_stop.foot_width, 2, by_the_sheet});
      break;
    default:
      break;
  }
  return sizes;
}

std::vector<Size> behind_raised(const Job& job, const HoleShort& lack) {
  const Kit& kit = job.kit;
  switch (lack.part.id.kind) {
    case Kind::rail:
      switch (lack.hole.purpose) {
        case Kind::track_bolt:
          return {{"kit.mounting.line", kit.mounting.line, 1, by_the_sheet}};
        case Kind::bunk_bolt:
          return {{"kit.bunk.line", kit.bunk.line, 1, by_the_sheet}};
        case Kind::stop_bolt:
          return {{"kit.track_stop.line", kit.track_stop.line, 1, by_the_sheet}};
        case Kind::gusset_bolt:
          return {{"kit.gusset.bottom", kit.gusset.bottom, 1, by_the_sheet}};
        default:
          return {};
      }
    case Kind::bunk:
      return {{"kit.bunk.flat_leg", kit.bunk.flat_leg, 2, by_the_sheet}};
    case Kind::track_stop:
      return {{"kit.track_stop.foot_length", kit.track_stop.foot_length, 2, by_the_sheet}};
    case Kind::main:
      return {{"frame.jack.bolt_z", job.frame.jack.bolt_z, -2, "put the jacks' bolts {} apart up and down"}};
    case Kind::jack:
      return {
          {"frame.jack.bolt_x", job.frame.jack.bolt_x, 2, "put the jacks' bolts {} apart along the main"}};
    case Kind::tongue_jack:
      return {{"frame.tongue_jack.bolt_circle", job.frame.tongue_jack.bolt_circle, 2,
               "take a tongue jack with a bolt circle of {}"}};
    default:
      return {};
  }
}

Mm changed(const Figures& figures, const Size& size, Mm by) {
  const Mm exact = size.now + size.per * by;
  return size.per > 0 ? figures.round_up(exact) : -figures.round_up(-exact);
}

void say_sizes(const Scene& scene, const std::vector<Size>& sizes, Mm by, Finding& f) {
  const Figures& figures = scene.figures;
  for (const Size& size : sizes) {
    const Mm to = changed(figures, size, by);
    if (to <= 0) continue;
    if (!f.remedy.empty()) f.remedy += "; or ";
    f.remedy += size.words == by_the_sheet
                    ? fmt::format("check {}, {}, against the maker's sheet, where {} would do", size.key,
                                  figures.say(size.now), figures.say(to))
                    : fmt::format(fmt::runtime(size.words), figures.say(to));
    f.changes.push_back({size.key, figures.set(to)});
  }
}

Vec3 slot_axis(const Scene& scene, const HoleShort& lack) {
  const Vec3 local{std::cos(lack.hole.angle), std::sin(lack.hole.angle), 0};
  const bool upright = lack.part.id.kind == Kind::rail && lack.hole.purpose == Kind::gusset_bolt;
  return scene.bed.items[lack.item].placement.direction(upright ? Vec3{local.x, 0, local.y} : local);
}

}  // namespace

void suggest_edge(const Scene& scene, const HoleShort& lack, Finding& f) {
  const Figures& figures = scene.figures;
  const Way way = way_of(lack.toward, scene.bed.items[lack.item].id.side);
  if (scene.input.job) {
    std::vector<Size> sizes = behind_edge(scene, lack, way);
    add_slot(*scene.input.job, lack, slot_axis(scene, lack), sizes);
    say_sizes(scene, sizes, lack.by, f);
  } else if (lack.part.id.kind == Kind::tab && way == Way::along) {
    const Box3& box = scene.boxes[lack.item];
    say_sizes(scene, {{"frame.tabs.length", box.high.x - box.low.x, 2, "make the tabs {} long"}}, lack.by, f);
  }
  if (f.remedy.empty())
    f.remedy = fmt::format("move the hole {} from the edge, or the edge from the hole",
                           figures.say(figures.round_up(lack.by)));
}

void suggest_away(const Scene& scene, const HoleShort& lack, Finding& f) {
  const Figures& figures = scene.figures;
  if (scene.input.job) {
    std::vector<Size> sizes = behind_raised(*scene.input.job, lack);
    add_slot(*scene.input.job, lack, slot_axis(scene, lack), sizes);
    say_sizes(scene, sizes, lack.by, f);
  }
  if (f.remedy.empty())
    f.remedy = fmt::format("move the hole {} away from it", figures.say(figures.round_up(lack.by)));
}

}  // namespace bedwright
