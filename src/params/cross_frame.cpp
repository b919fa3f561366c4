// Checks between the keys of a frame.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "params/cross_check.h"
#include "units/print.h"

namespace bedwright {

void CrossCheck::check_frame_names() {
  const FrameFile& frame = job_.frame;
  check_section(frame.main.section, Shape::channel);
  check_section(frame.cross_member.section, Shape::channel);
  check_section(frame.front_member.section, Shape::channel);
  check_section(frame.rear_member.section, Shape::channel);
  check_section(frame.tongue.section, Shape::channel);
  if (frame.tabs.clip) check_section(frame.tabs.clip->section, Shape::angle);
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
