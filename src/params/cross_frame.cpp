// Checks between the keys of a frame.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "params/cross_check.h"
#include "units/print.h"

namespace bedwright {

void CrossCheck::check_frame_names() {
  const FrameFile& frame = job_.frame;
  const std::vector<Shape> channel{Shape::channel}, either{Shape::channel, Shape::tube};
  check_section(frame.main.section, either);
  check_section(frame.cross_member.section, either);
  check_section(frame.front_member.section, either);
  check_section(frame.rear_member.section, either);
  check_section(frame.tongue.section, channel);
  if (frame.tabs.clip) check_section(frame.tabs.clip->section, {Shape::angle});
  check_closed();
}

// What a member that is a tube asks of the rest of the frame. No hand or wrench gets into
// it, and what runs into it must run out.
void CrossCheck::check_closed() {
  const FrameFile& frame = job_.frame;
  const auto closed = [&](const Name& name) {
    const Section* section = job_.catalog.section(name.text);
    return section && is_closed(*section);
  };
  const bool main = closed(frame.main.section), cross = closed(frame.cross_member.section);
  for (const auto& [key, name] : {std::pair("front_member.section", &frame.front_member.section),
                                  {"rear_member.section", &frame.rear_member.section}})
    if (!main && closed(*name) && job_.catalog.section(frame.main.section.text))
      problem(
          frame_, key,
          fmt::format("{} is a tube, and the mains' flanges, {}, find no flat on it to be welded to inside "
                      "their ends",
                      name->text, frame.main.section.text),
          "name a channel here, or a tube for the mains too");
  if ((main || cross) && !stands(frame) && sound(frame_, {"drain_hole"}) && frame.drain_hole <= 0)
    problem(
        frame_, "drain_hole",
        fmt::format("is missing, and {} is a tube closed at both ends: it keeps the water that runs in, and "
                    "bursts where it is galvanised or welded wet",
                    main ? "a main" : "a cross member"),
        "give the diameter of a hole drilled in its underside near both ends, such as 3/8 in or 10 mm");
  check_jack_on_mains(main);
}

// No nut goes inside a tube: its jacks' plates hang below it, with half a wrench's width between.
void CrossCheck::check_jack_on_mains(bool tubes) {
  const FrameJack& jack = job_.frame.jack;
  const Section* main = job_.catalog.section(job_.frame.main.section.text);
  const BoltSize* bolt = job_.catalog.bolt(jack.hole.bolt.text);
  if (!main || !bolt || !sound(frame_, {"jack.bolt_z", "jack.below", "jack.hole"})) return;
  if (!tubes) {
    if (jack.below)
      problem(
          frame_, "jack.below",
          fmt::format("is for mains that are tubes; {} takes its jacks' bolts through the middle of its web",
                      main->name),
          "leave it out");
    return;
  }
  const Mm least = std::ceil(main->depth + usual_tools(*bolt).wrench_width / 2 + jack.bolt_z / 2);
  if (jack.below && *jack.below >= least - same_place) return;
  problem(frame_, jack.below ? "jack.below" : "jack",
          fmt::format("{}; the mains are tubes, {} deep, and no nut or wrench gets inside",
                      jack.below ? both_units(Dimension::length, *jack.below) +
                                       " puts the jack's upper bolts through the mains or too near them"
                                 : std::string("has no below, which puts its bolts below the mains"),
                      both_units(Dimension::length, main->depth)),
          fmt::format("hang the plates lower: {} {} or more, or take channels for the mains",
                      jack.below ? "make it" : "give below:", both_units(Dimension::length, least)));
}

void CrossCheck::check_tabs() {
  const FrameTabs& tabs = job_.frame.tabs;
  if (sound(frame_, {"tabs.slot_length", "tabs.hole_diameter"}) &&
      tabs.slot_length + same_place < tabs.hole_diameter) {
    problem(frame_, "tabs.slot_length",
            fmt::format("{} is shorter than the hole's diameter, {}",
                        both_units(Dimension::length, tabs.slot_length),
                        both_units(Dimension::length, tabs.hole_diameter)),
            "give the slot's length overall, the same as hole_diameter for a round hole");
  }
  check_order(frame_, "tabs.slot_length", tabs.slot_length, "tabs.length", tabs.length, true);
  if (tabs.plate && sound(frame_, {"tabs.plate"}) && tabs.plate->pad_thickness > 0 &&
      tabs.plate->pad_width <= 0) {
    problem(frame_, "tabs.plate.pad_thickness", "is a pad's, yet the pad has no width",
            "give tabs.plate.pad_width, or leave the pad out");
  }
  if (!sound(frame_, {"tabs.style", "tabs.plate", "tabs.clip"})) return;
  const bool wants_plate = tabs.style == TabStyle::plate;
  const bool plate = tabs.plate.has_value(), clip = tabs.clip.has_value();
  if (wants_plate ? !plate : !clip) {
    const char* wanted = wants_plate ? "plate" : "clip";
    problem(frame_, "tabs.style", fmt::format("is {0}, yet tabs.{0} is missing", wanted),
            fmt::format("add tabs.{} with the sizes of the tab, or change the style", wanted));
  }
  if (wants_plate ? clip : plate) {
    const char* extra = wants_plate ? "clip" : "plate";
    problem(frame_, fmt::format("tabs.{}", extra),
            fmt::format("is not used by tabs of style {}", wants_plate ? "plate" : "clip"),
            fmt::format("leave it out, or change the style to {}", extra));
  }
}

void CrossCheck::check_bought() {
  const FrameFile& frame = job_.frame;
  check_hole(frame_, "jack.hole", frame.jack.hole);
  check_hole(frame_, "tongue_jack.hole", frame.tongue_jack.hole);
  check_order(frame_, "jack.post_bottom", frame.jack.post_bottom, "jack.post_top", frame.jack.post_top, true);
  check_order(frame_, "jack.bolt_x", frame.jack.bolt_x, "jack.plate_length", frame.jack.plate_length, true);
  check_order(frame_, "jack.bolt_z", frame.jack.bolt_z, "jack.plate_height", frame.jack.plate_height, true);
  check_order(frame_, "corner_gusset.corner_cut", frame.corner_gusset.corner_cut, "corner_gusset.leg",
              frame.corner_gusset.leg, true);
  if (sound(frame_, {"axle.count", "axle.spread"}) && frame.axle.count > 1 && frame.axle.spread <= 0) {
    problem(frame_, "axle.spread", fmt::format("is missing for {} axles", frame.axle.count),
            "give the distance between neighbouring axles");
  }
}

}  // namespace bedwright
